using Umpirage.Rules.Games;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Rules.Calls;

/// <summary>Holds the game after a ruling against the published one: "bottom 3, 1 out, third #12" or, for a choice, "takes the play: …".</summary>
public static class AfterCheck
{
    /// <summary>What differs, in words; nothing when all is as published.</summary>
    public static IEnumerable<string> Misses(Play play, IReadOnlyList<Ending> endings, List<Finding> findings)
    {
        foreach (var line in play.After)
        {
            var colon = line.Text.IndexOf(':');
            var (choice, text) = colon < 0 ? (null, line.Text) : (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim());
            var place = $"{play.File}, line {line.Line}: ";
            var published = Scene.Read(play.File, [(text, line.Line)], findings);
            var ending = endings.FirstOrDefault(e => choice is null || (e.Choice is not null && Words.Same(e.Choice, choice)));
            if (ending is null) yield return place + $"there is no ending '{choice}'; {Words.Offer(choice ?? "", [.. endings.Select(e => e.Choice).OfType<string>()])}";
            else if (ending.After is null) yield return place + $"the game after it cannot be told: {(ending.Reasons.Count > 0 ? string.Join("; ", ending.Reasons) : ending.Ruling.InWords)}";
            else if (!Alike(published, ending.After, text)) yield return place + $"after the ruling {ending.After.InWords}{On(ending.After)}, at bat {ending.After.Batter}; published: {text}";
        }
    }

    private static bool Alike(Game a, Game b, string said) =>
        (a.Inning, a.Batting, a.Outs, a.Count, a.First, a.Second, a.Third) == (b.Inning, b.Batting, b.Outs, b.Count, b.First, b.Second, b.Third)
        && (!said.Contains("at bat") || a.Batter == b.Batter)
        && (!said.Contains("visitors") || a.Visitors.Runs == b.Visitors.Runs) && (!said.Contains("home ") || a.Home.Runs == b.Home.Runs);

    private static string On(Game game) => string.Concat(new[] { Place.First, Place.Second, Place.Third }.Where(p => game.On(p) != "").Select(p => $", {Scorekeeper.Name(p)} {game.On(p)}"));
}
