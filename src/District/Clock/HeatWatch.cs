using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Clock;

/// <summary>A heat number held against the code: the formula, the band, how far it is from the next one, and what the code asks for.</summary>
/// <param name="Fahrenheit">The number in degrees Fahrenheit, to a tenth.</param>
public sealed record HeatAnswer(string Measure, string Code, double Fahrenheit, string Shown, string Band, string? ToNext, SheetRuling Ruling, string Limits, IReadOnlyList<string> Cautions);

/// <summary>
/// Rules the sheets on heat by a number. The number is never rounded into a milder band: a number that is told as 103.0 is ruled as at least 103,
/// and one that lies beyond the sheet's range is ruled by the range's end, which is its strictest band.
/// </summary>
public static class HeatWatch
{
    /// <summary>How the sheets name the number from which no local rule may let play go on.</summary>
    private const string Highest = "highest ";

    /// <summary>The answer of the sheet 'heat'; null, with findings, when the code cannot be taken.</summary>
    public static HeatAnswer? Rule(Codebook book, string address, HeatIndex heat, DateOnly today, List<Finding> findings, params string[] known) =>
        Casebook.Table(book, address, "heat", today, "heat", findings) is { } table ? Rule(table, "heat index", heat.Exact, heat.Shown, HeatIndex.Limits, known, findings) : null;

    /// <summary>The answer of the sheet 'heat by globe'; null, with findings, when the code cannot be taken.</summary>
    public static HeatAnswer? Rule(Codebook book, string address, GlobeTemperature globe, DateOnly today, List<Finding> findings, params string[] known) =>
        Casebook.Table(book, address, "heat by globe", today, "heat by globe", findings) is { } table ? Rule(table, "globe temperature", globe.Exact, globe.Shown, GlobeTemperature.Limits, known, findings) : null;

    private static HeatAnswer Rule(Table table, string measure, double exact, string shown, string limits, IEnumerable<string> known, List<Finding> findings)
    {
        var sheet = table.Sheet;
        var fact = sheet.Terms.First(t => t.Name == measure);
        var range = fact.Term.Band!;
        var told = Degrees.Tenth(exact);
        var counted = Math.Clamp(Degrees.Counted(exact), range.Low, range.High);
        var edges = sheet.Edges[fact.Index];
        var band = sheet.BandOf(fact.Index, counted);
        // a local rule that lets play go on from where none may is a fault of the layer, and the answer does not follow it
        List<string> order = sheet.Values.Any(v => v.Key.Name.StartsWith(Highest, StringComparison.OrdinalIgnoreCase) && v.Value.Quantity is { } most && counted >= most.Value) ? ["someone in charge says is stop"] : [];
        var ruling = SheetRuling.Of(table, [$"{measure} is {counted.ToString("0.#########", CultureInfo.InvariantCulture)}", .. order.Count > 0 ? known.Where(k => !k.StartsWith("someone in charge", StringComparison.OrdinalIgnoreCase)) : known, .. order], findings);
        var next = Enumerable.Range(0, edges.Length).Where(i => edges[i] > counted && double.IsFinite(edges[i])).Select(i => (int?)i).FirstOrDefault();
        var toNext = next is { } at ? $"{Degrees.Tell(edges[at] - told)} below the {fact.Values[at + 1]} band, which begins at {Degrees.Tell(edges[at])} F" : null;
        return new(measure, sheet.Code.Address.ToString(), told, shown, fact.Values[band], toNext, ruling, limits, [Cautions.Heat]);
    }
}
