using System.Globalization;
using System.Text;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>Finds where the points of a taped diamond lie, which reading does not fit, and which codes the diamond serves.</summary>
public sealed record Surveyor(SurveyFile Survey, TapeNet Net, IReadOnlyList<Suspect> Suspects, IReadOnlyList<Serving> Servings)
{
    /// <summary>Half the long way across the region that holds a point in 95 of 100 surveys, in deviations (the root of chi-square with two degrees, 5.991).</summary>
    private const double Region = 2.4477;

    /// <summary>Null, with every reason, when these readings cannot be of any field, or do not hold its points.</summary>
    public static Surveyor? Of(SurveyFile survey, IReadOnlyList<Layout> layouts, List<Finding> findings)
    {
        var before = findings.Count;
        void Fault(string message) => findings.Add(new(FindingKind.ImpossiblePlay, survey.Name, 0, message));
        var deviation = survey.Tape ?? layouts[0].Measures.Feet("one tape reading is good to");
        List<string> points = [.. survey.Readings.SelectMany(r => new[] { r.From, r.To }).Distinct()];
        if (!points.Contains("home")) Fault("no tape begins at home; everything is taped from its rear point");
        foreach (var fault in Doubts.CannotClose(survey.Readings, deviation)) Fault(fault);
        foreach (var fault in Doubts.NotHeld(survey.Readings, points)) Fault(fault);
        if (findings.Count > before) return null;
        if (Doubts.OtherUnit(survey.Readings, layouts) is { } unit) { Fault($"these tapes fit no field as they were typed, and they fit one if they were read in {unit}; write each with its unit: '18.29 m' or '60 ft'"); return null; }
        if (Doubts.Exchanged(survey.Readings, layouts) is var (a, b)) { Fault($"{a} and {b} look exchanged: named the other way round the tapes fit a field, as they stand they fit none; which is which?"); return null; }
        var nearest = layouts.MinBy(l => Doubts.Miss(survey.Readings, l, n => n))!;
        var pins = Pins(nearest, points, survey.Readings);
        if (TapeNet.Of(pins, survey.Readings, deviation) is not { } whole) { Fault($"{survey.Readings.Count} tapes do not hold {points.Count} points in place; add tapes, best diagonals (home to second, first to third)"); return null; }
        var (net, suspects) = Suspect.Hunt(whole, pins);
        return new(survey, net, suspects, [.. layouts.Select(l => Mender.Hold(l, net))]);
    }

    /// <summary>Home stays, and one point stays on its line from home: tapes alone do not say which way a field looks.</summary>
    private static List<Pin> Pins(Layout layout, List<string> points, IReadOnlyList<Reading> readings)
    {
        var taped = points.Where(p => p != "home" && readings.Any(r => r.Joins("home", p))).ToList();
        var line = taped.Contains("second") ? "second" : taped.OrderByDescending(p => Place(layout, p).Length).FirstOrDefault() ?? points.First(p => p != "home");
        return [.. points.Select(p => new Pin(p, Place(layout, p), p == "home" ? Hold.Known : p == line ? Hold.OnItsLine : Hold.Free))];
    }

    /// <summary>A point by its name in a survey, where "plate" stands for the middle of the pitcher's plate.</summary>
    internal static At Place(Layout layout, string point) => point == SurveyFile.Plate ? layout[PlateMark] : layout[point];

    private const string PlateMark = "pitcher's plate, middle of the front";

    /// <summary>The names a survey may use.</summary>
    public static IReadOnlyCollection<string> Names(IReadOnlyList<Layout> layouts) =>
        [.. Layout.Corners, SurveyFile.Plate, .. layouts.Select(l => l.Marks.Where(m => m.Staked && m.Name != PlateMark).Select(m => m.Name)).Aggregate((a, b) => a.Intersect(b)).Except(Layout.Corners)];

    /// <summary>How far a point may lie from where it was found, in feet, in 95 of 100 surveys.</summary>
    public double Within(string point)
    {
        var (xx, xy, yy) = Net.Spread(point);
        var half = (xx + yy) / 2;
        return Region * Math.Sqrt(half + Math.Sqrt(Math.Pow((xx - yy) / 2, 2) + xy * xy));
    }

    public string Text()
    {
        var text = new StringBuilder();
        text.AppendLine($"SURVEY  {Survey.Name}").AppendLine();
        text.AppendLine("WHERE THE POINTS ARE (feet from the rear point of home: right of the line to second, and up it; within, 95 of 100)");
        foreach (var point in Net.Points) text.AppendLine(CultureInfo.InvariantCulture, $"  {point,-24} {Net[point].X,9:0.00} {Net[point].Y,9:0.00}   {(point == "home" ? "" : Tape.Told(Within(point)))}");
        text.AppendLine(CultureInfo.InvariantCulture, $"  {Survey.Readings.Count} tapes, {Net.Freedom} more than needed{(Suspects.Count > 0 ? $" after {Suspects.Count} set aside" : "")}; a tape is taken to be good to {Tape.Told(Net.Deviation)}{(Net.Freedom > 0 ? $", and shows {Tape.Told(Net.Shown)}" : "")}").AppendLine();
        text.AppendLine("TAPES IN DOUBT");
        if (Net.Freedom == 0 && Suspects.Count == 0) text.AppendLine("  Nothing checks these tapes: a wrong one would not show. Add a diagonal.");
        else if (Suspects.Count == 0) text.AppendLine("  none");
        foreach (var suspect in Suspects) text.AppendLine($"  {suspect.InWords}");
        text.AppendLine().AppendLine("WHICH DIVISIONS IT SERVES");
        foreach (var serving in Servings.OrderBy(s => s.Stands))
        {
            text.AppendLine($"  {serving.InWords}");
            foreach (var move in serving.Moves) text.AppendLine($"    {move.InWords}");
        }
        text.AppendLine().AppendLine("Advice from typed tapes and stated editions; the printed rule book and the local authority rule.");
        return text.ToString();
    }
}
