using System.Globalization;

namespace Umpirage.Web;

/// <summary>A count typed during a game: nothing is kept of it.</summary>
public sealed record LiveCount(int Pitches, int Before, int Innings)
{
    private const int MostPitches = 300, MostInnings = 30;

    /// <summary>Null, with every fault, when the numbers cannot be.</summary>
    public static LiveCount? Read(string? pitches, string? before, string? innings, List<string> faults)
    {
        var all = Number("pitches", pitches, MostPitches, faults);
        var first = Number("before the present batter", before, MostPitches, faults);
        var played = Number("innings", innings, MostInnings, faults);
        if (faults.Count > 0) return null;
        if (first > all) faults.Add($"before the present batter: found {first}; allowed is at most the {all} pitches");
        if (played > all) faults.Add($"innings: found {played}; allowed is at most {all}, since each inning has a pitch");
        return faults.Count > 0 ? null : new(all, first, played);
    }

    private static int Number(string what, string? text, int most, List<string> faults)
    {
        if (string.IsNullOrWhiteSpace(text)) return 0;
        if (int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= most) return number;
        faults.Add($"{what}: found '{Typed.Cut(text, 20)}'; allowed is a whole number from 0 to {most}");
        return 0;
    }
}
