using Umpirage.District.Diamonds;

namespace Umpirage.Web;

/// <summary>A mark in a picture 320 wide and 300 high: where it stands, what kind it is, its letter, and what is said of it.</summary>
public sealed record Mark(int X, int Y, string Kind, string Letter, string Says);

/// <summary>Places what is said of a play: by the subject's own picture, or, where it has none, on the field by the places the words name.</summary>
public static class Marks
{
    public static IReadOnlyList<Mark> Of(Picture picture, IReadOnlyList<string> said)
    {
        var marks = new List<Mark>();
        foreach (var placing in picture.Of(said))
            marks.Add(Apart(marks, picture.View.Spots[placing.Spot], placing.Figure.ToString().ToLowerInvariant(), Drawing.Letter(placing.Figure).ToString(), placing.Said));
        return marks;
    }

    private static readonly (string Word, string Spot)[] Places =
    [
        ("first base", "first"), ("second base", "second"), ("third base", "third"), ("catcher", "catcher"), ("home", "home"), ("plate", "home"), ("batter", "home"), ("box", "home"), ("strike", "home"),
        ("foul", "foul ground"), ("dead ground", "dead ground"), ("dugout", "dead ground"), ("out of play", "dead ground"), ("stands", "dead ground"), ("bench", "dead ground"), ("circle", "circle"), ("pitch", "circle"), ("mound", "circle"),
        ("outfield", "centre field"), ("fence", "centre field"), ("first", "first"), ("second", "second"), ("third", "third"), ("shortstop", "shortstop"), ("infield", "over the infield"), ("fielder", "second base fielder"), ("throw", "second base fielder"), ("runner", "toward third"),
    ];

    /// <summary>Facts that name no place are not drawn: a picture shows where, the text says the rest.</summary>
    public static IReadOnlyList<Mark> Of(IReadOnlyList<string> said)
    {
        var (field, marks, number) = (Views.All[0], new List<Mark>(), 0);
        foreach (var fact in said)
        {
            var at = fact.IndexOf(" is ", StringComparison.Ordinal);
            if (at < 0) continue;
            var (name, value) = (fact[..at].ToLowerInvariant(), fact[(at + 4)..].ToLowerInvariant());
            if (Runners(name, value) is { } bases) { foreach (var one in bases) marks.Add(Apart(marks, field.Spots[one], "runner", "R", fact)); continue; }
            var spot = Places.FirstOrDefault(p => value.Contains(p.Word, StringComparison.Ordinal)).Spot ?? Places.FirstOrDefault(p => name.Contains(p.Word, StringComparison.Ordinal)).Spot;
            if (spot is not null) marks.Add(Apart(marks, field.Spots[spot], "said", (++number).ToString(System.Globalization.CultureInfo.InvariantCulture), fact));
        }
        return marks;
    }

    /// <summary>Beside what stands there already.</summary>
    private static Mark Apart(List<Mark> marks, (double X, double Y) at, string kind, string letter, string says)
    {
        var (x, y) = ((int)(at.X * 3.2), (int)(at.Y * 3));
        while (marks.Any(m => Math.Abs(m.X - x) < 24 && Math.Abs(m.Y - y) < 22)) x += x < 270 ? 27 : -27 * 2;
        return new(x, y, kind, letter, says);
    }

    private static List<string>? Runners(string name, string value)
    {
        if (name is not ("runners" or "runners on" or "bases" or "on base" or "runners on base") && !name.Contains("occupied", StringComparison.Ordinal)) return null;
        if (value.Contains("loaded", StringComparison.Ordinal) || value.Contains("full", StringComparison.Ordinal)) return ["first", "second", "third"];
        return [.. new[] { "first", "second", "third" }.Where(b => value.Contains(b, StringComparison.Ordinal))];
    }
}
