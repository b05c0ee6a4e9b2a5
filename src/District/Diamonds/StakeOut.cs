using System.Globalization;
using System.Text;

namespace Umpirage.District.Diamonds;

/// <summary>A layout as two people with one tape stake it: the order of work, two tapes for every point, and what must come out.</summary>
/// <param name="Told">Tells a length in feet.</param>
public sealed record StakeOut(Layout Layout, Func<double, string> Told, IReadOnlyList<string> Work, IReadOnlyList<Stake> Stakes, IReadOnlyList<Diagonal> Diagonals)
{
    /// <summary>How finely its lengths are told.</summary>
    public string Fineness => Told == Tape.InMetres ? "to the millimetre" : "to the nearest 1/8 inch";

    /// <param name="told">Tells a length in feet; by default in feet and inches.</param>
    public static StakeOut Of(Layout layout, Func<double, string>? told = null)
    {
        told ??= Tape.Told;
        IReadOnlyList<Stake> stakes = [.. layout.Marks.Where(m => m.Staked && !Layout.Corners.Contains(m.Name)).Select(m => Of(layout, m)).OrderBy(s => s.From == "home" && s.AndFrom == "first" ? 0 : s.From == "home" ? 1 : 2)];
        return new(layout, told, Steps(layout, told), stakes, Checks(layout));
    }

    /// <summary>Of the six pairs of corners the one whose tapes cross nearest to a right angle; a tape of no length says nothing.</summary>
    private static Stake Of(Layout layout, Mark mark)
    {
        var corners = Layout.Corners.Select(c => (Name: c, At: layout[c])).Where(c => c.At.To(mark.At) > 0.5).ToList();
        var pairs = from a in corners from b in corners where Index(a.Name) < Index(b.Name) select (A: a, B: b, Cut: Cut(a.At, b.At, mark.At));
        // home comes before a slightly better cut: one tape end stays there
        var (first, second, cut) = pairs.OrderByDescending(p => Math.Sin(p.Cut * Math.PI / 180) + (p.A.Name == "home" ? 0.15 : 0)).First();
        var check = corners.Where(c => c.Name != first.Name && c.Name != second.Name).MinBy(c => c.At.To(mark.At));
        return new(mark.Name, mark.At, first.Name, first.At.To(mark.At), second.Name, second.At.To(mark.At), check.Name, check.At.To(mark.At), cut);
    }

    private static int Index(string corner) => Layout.Corners.TakeWhile(c => c != corner).Count();

    /// <summary>The angle between two tapes at the point, in degrees, 0 to 180.</summary>
    private static double Cut(At a, At b, At at)
    {
        At u = a - at, v = b - at;
        return Math.Acos(Math.Clamp((u.X * v.X + u.Y * v.Y) / (u.Length * v.Length), -1, 1)) * 180 / Math.PI;
    }

    private static List<string> Steps(Layout layout, Func<double, string> told)
    {
        double bases = layout["home"].To(layout["first"]), across = layout["home"].To(layout["second"]);
        var plate = layout.Marks.First(m => m.Made == Made.Rubber && m.Name != "home");
        var coloured = layout.Find("coloured half, outer back corner");
        List<string> twofold = coloured is { } corner ? [$"The double base: its white half is first base and lies inside; its coloured half lies against it in foul ground, out to {told(layout["first"].To(corner))} from first's stake, square to the line."] : [];
        List<string> raised = layout.Find("middle of the mound") is { } middle
            ? [$"The mound has its middle at {told(layout["home"].To(middle))} from home, is {told(layout.Measures.Feet("mound across"))} across, and the plate on it lies {told(layout.Measures.Feet("mound height"))} higher than home plate."] : [];
        return
        [
            "Drive a nail at the rear point of home. Everything is taped from it.",
            $"Stretch the tape from home through the middle of the field. Drive a nail at {told(across)}: that is the middle of second base.",
            $"Hold the tape's end at home and its {told(2 * bases)} mark at second. A stick at the {told(bases)} mark, pulled tight toward first, stands at first's outer back corner. (Two people: loop both ends over the nails. With a shorter tape: strike an arc of {told(bases)} from home and another from second; they cross there.)",
            "Carry the same stick over to the other side and pull tight: that is third's outer back corner.",
            $"Check before anything else: first to third must read {told(across)}, and each side {told(bases)}. If first to third is off, second is off its line: begin again from the nail at second.",
            "First and third lie wholly inside the square, their outer corners at the stakes. Second lies with its middle on the nail.",
            .. twofold,
            $"Stretch a string from home to second. The front edge of the pitcher's plate lies across it at {told(layout["home"].To(plate.At))} from home, square to the string.",
            .. raised,
            "Tape the other points from the table: strike a short arc from the first corner, another from the second; the stake stands where they cross. Work through all points of one pair of corners before moving the tape's end.",
            "Read the check tape for every stake, and write down what it read.",
        ];
    }

    private static List<Diagonal> Checks(Layout layout)
    {
        List<Diagonal> checks = [];
        foreach (var (from, to) in ((string, string)[])[("home", "second"), ("first", "third"), ("home", "first"), ("first", "second"), ("second", "third"), ("third", "home")])
            checks.Add(new(from, to, layout[from].To(layout[to])));
        var plate = layout.Marks.First(m => m.Made == Made.Rubber && m.Name != "home");
        foreach (var corner in Layout.Corners) checks.Add(new(corner, plate.Name, layout[corner].To(plate.At)));
        return checks;
    }

    /// <summary>The sheet as text, for a terminal or a page of paper.</summary>
    public string Text()
    {
        var text = new StringBuilder();
        text.AppendLine($"STAKE-OUT  {Layout.Code.Address}").AppendLine($"{string.Join(" <- ", Layout.Code.LayerNames)}").AppendLine();
        text.AppendLine("ORDER OF WORK (two people, one tape, a string, nails)");
        foreach (var (step, at) in Work.Select((s, i) => (s, i + 1))) text.AppendLine(CultureInfo.InvariantCulture, $"  {at}. {step}");
        text.AppendLine().AppendLine("MUST COME OUT");
        foreach (var diagonal in Diagonals) text.AppendLine($"  {diagonal.InWords}");
        text.AppendLine().AppendLine($"TAPES ({Fineness})");
        var wide = Stakes.Max(s => s.Mark.Length);
        foreach (var pair in Stakes.GroupBy(s => (s.From, s.AndFrom)))
        {
            text.AppendLine($"  {"from " + pair.Key.From + " and " + pair.Key.AndFrom}");
            foreach (var s in pair)
                text.AppendLine($"    {s.Mark.PadRight(wide)}  {Told(s.Reading),17}  {Told(s.AndReading),17}   check {Told(s.CheckReading)} from {s.Check}{(s.Cut is < 20 or > 160 ? "  (the tapes cross flat: check it)" : "")}");
        }
        List<string> toLookUp = [.. Layout.Measures.Unchecked];
        if (toLookUp.Count > 0) text.AppendLine().AppendLine($"Values not checked against a book; look them up before the first game: {string.Join(", ", toLookUp)}.");
        text.AppendLine().AppendLine("Advice from a stated edition; the printed rule book and the local authority rule.");
        return text.ToString();
    }
}
