namespace Umpirage.District.Pitchers;

/// <summary>
/// Everything one player has pitched, for all teams, divisions and sports, in the order of days and starts. The order in which the lines
/// came in, clocks and zones do not matter: a line belongs to the calendar day it names.
/// </summary>
public sealed record Ledger(string Player, IReadOnlyList<Outing> Outings)
{
    public static Ledger Empty(string player) => new(player, []);

    /// <param name="lines">Every line on record of the player, corrections included.</param>
    /// <param name="game">What is known of a game; a line of a game that is not known is an error of the caller.</param>
    public static Ledger Of(string player, IEnumerable<Appearance> lines, Func<string, PitchedGame> game) => new(player,
    [
        .. Appearance.Standing(lines.Where(l => l.Player == player)).GroupBy(l => (l.Game, l.Day))
            .Select(g => Outing.Of(game(g.Key.Game), [.. g.OrderBy(l => l.Counter, StringComparer.Ordinal)]))
            .OrderBy(o => o.Day).ThenBy(o => o.Game.Start).ThenBy(o => o.Game.Key, StringComparer.Ordinal),
    ]);

    /// <summary>The same with these figures for one game on one day, in the place of any on record.</summary>
    public Ledger With(PitchedGame game, DateOnly day, string team, Count count) => this with
    {
        Outings =
        [
            .. Outings.Where(o => o.Day != day || o.Game.Key != game.Key).Append(new(game, day, team, count, count, []))
                .OrderBy(o => o.Day).ThenBy(o => o.Game.Start).ThenBy(o => o.Game.Key, StringComparer.Ordinal),
        ],
    };

    /// <summary>One ledger for each player that the lines name.</summary>
    public static IReadOnlyDictionary<string, Ledger> All(IEnumerable<Appearance> lines, Func<string, PitchedGame> game) =>
        lines.GroupBy(l => l.Player).ToDictionary(g => g.Key, g => Of(g.Key, g, game));
}
