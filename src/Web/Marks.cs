namespace Umpirage.Web;

/// <summary>A numbered mark in a picture: where it stands, what it says, and whether it is a runner on base.</summary>
public sealed record Mark(int X, int Y, int Number, string Says, bool Runner);

/// <summary>Places what is said of a play on a drawn diamond, by the places its words name.</summary>
public static class Marks
{
    /// <summary>The picture is 320 wide and 300 high; home is at the bottom.</summary>
    public static readonly (int X, int Y) Home = (160, 262), First = (246, 176), Second = (160, 90), Third = (74, 176), Circle = (160, 182), Centre = (160, 30), Lane = (214, 222), Foul = (286, 216), Dead = (24, 262);

    private static readonly (string Word, (int X, int Y) At)[] Places =
    [
        ("first base", First), ("second base", Second), ("third base", Third), ("home", Home), ("plate", Home), ("batter", Home), ("box", Home), ("bat", Home), ("strike", Home), ("catcher", (160, 284)),
        ("lane", Lane), ("foul", Foul), ("dead ground", Dead), ("dugout", Dead), ("out of play", Dead), ("stands", Dead), ("bench", Dead), ("circle", Circle), ("pitch", Circle), ("foot", Circle), ("mound", Circle), ("outfield", Centre),
        ("fence", Centre), ("first", First), ("second", Second), ("third", Third), ("shortstop", (116, 118)), ("infield", (160, 136)), ("fielder", (204, 118)), ("throw", (204, 118)), ("runner", (118, 132)),
    ];

    public static IReadOnlyList<Mark> Of(IReadOnlyList<string> said)
    {
        var marks = new List<Mark>();
        var taken = new Dictionary<(int, int), int>();
        foreach (var fact in said)
        {
            var at = fact.IndexOf(" is ", StringComparison.Ordinal);
            if (at < 0) continue;
            var (name, value) = (fact[..at].ToLowerInvariant(), fact[(at + 4)..].ToLowerInvariant());
            if (Runners(name, value) is { } bases)
            {
                marks.AddRange(bases.Select(b => new Mark(b.X, b.Y, 0, fact, true)));
                if (bases.Count > 0) continue;
            }
            var place = Places.FirstOrDefault(p => Has(value, p.Word)).At;
            if (place == default) place = Places.FirstOrDefault(p => Has(name, p.Word)).At;
            if (place == default) place = (40, 40);
            var nth = taken[place] = taken.GetValueOrDefault(place) + 1;
            marks.Add(new(place.X + 26 * ((nth + 1) / 2) * (nth % 2 == 0 ? -1 : nth == 1 ? 0 : 1), place.Y + (nth > 3 ? 22 : 0), marks.Count(m => !m.Runner) + 1, fact, false));
        }
        return marks;
    }

    private static bool Has(string text, string word) => text.Contains(word, StringComparison.Ordinal);

    private static List<(int X, int Y)>? Runners(string name, string value)
    {
        if (!(name is "runners" or "runners on" or "bases" or "on base" or "runners on base" || Has(name, "occupied"))) return null;
        if (Has(value, "loaded") || Has(value, "full")) return [First, Second, Third];
        var bases = new List<(int, int)>();
        if (Has(value, "first")) bases.Add(First);
        if (Has(value, "second")) bases.Add(Second);
        if (Has(value, "third")) bases.Add(Third);
        return bases;
    }
}
