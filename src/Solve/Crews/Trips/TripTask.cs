using System.Text.RegularExpressions;

namespace Umpirage.Solve.Crews.Trips;

/// <summary>
/// The travelling umpires of a double round robin: every crew has one game a round, sees every venue, is not at one venue twice within
/// <paramref name="VenueGap"/> rounds nor with one team twice within <paramref name="TeamGap"/>, and all travel as little as possible.
/// A published problem (Trick and Yildiz 2007), solved here as a check of the search.
/// </summary>
/// <param name="Home">By round and game, the home team, whose venue it is.</param>
/// <param name="Away">By round and game, the visitor.</param>
public sealed partial record TripTask(int Teams, int[][] Distance, int[][] Home, int[][] Away, int VenueGap, int TeamGap)
{
    public int Crews => Teams / 2;
    public int Rounds => Home.Length;

    [GeneratedRegex(@"-?\d+")]
    private static partial Regex Whole();

    /// <summary>Reads an instance: nTeams, dist (a square of whole numbers), opponents (a row a round; a plus is at home).</summary>
    /// <exception cref="InvalidDataException">The text has not that form; the message says what was found.</exception>
    public static TripTask Read(string text, int venueGap, int teamGap)
    {
        var (dist, opponents) = (text.IndexOf("dist", StringComparison.Ordinal), text.IndexOf("opponents", StringComparison.Ordinal));
        if (dist < 0 || opponents < dist) throw new InvalidDataException("found no 'dist' with 'opponents' after it; allowed is nTeams, dist, opponents");
        List<int> Numbers(string part) => [.. Whole().Matches(part).Select(m => int.Parse(m.Value, System.Globalization.CultureInfo.InvariantCulture))];
        if (Numbers(text[..dist]) is not [var teams, ..] || teams < 2 || teams > 32 || teams % 2 != 0) throw new InvalidDataException("nTeams: allowed is an even number from 2 to 32");
        var (square, plays) = (Numbers(text[dist..opponents]), Numbers(text[opponents..]));
        if (square.Count != teams * teams) throw new InvalidDataException($"dist: found {square.Count} numbers; allowed is {teams} times {teams}");
        var rounds = 2 * teams - 2;
        if (plays.Count != rounds * teams) throw new InvalidDataException($"opponents: found {plays.Count} numbers; allowed is {rounds} rounds of {teams}");
        var (home, away) = (new int[rounds][], new int[rounds][]);
        for (var r = 0; r < rounds; r++)
        {
            var at = Enumerable.Range(0, teams).Where(t => plays[r * teams + t] > 0).ToArray();
            if (at.Length != teams / 2 || at.Any(t => plays[r * teams + plays[r * teams + t] - 1] != -(t + 1))) throw new InvalidDataException($"opponents, round {r + 1}: teams do not meet in pairs");
            (home[r], away[r]) = (at, [.. at.Select(t => plays[r * teams + t] - 1)]);
        }
        return new(teams, [.. Enumerable.Range(0, teams).Select(i => square.Skip(i * teams).Take(teams).ToArray())], home, away, venueGap, teamGap);
    }
}

/// <summary>What was found: by crew and round the venue, its cost, a bound that no solution is below, and whether all was searched.</summary>
/// <param name="Status">optimal, feasible, infeasible or unknown.</param>
public sealed record TripResult(int[][]? Venues, long? Cost, long Bound, string Status, long Nodes, double Seconds);
