using System.Globalization;
using Umpirage.District.People;

namespace Umpirage.District.Demo;

/// <summary>A division of the demonstration: how many teams, on what base path in feet, with how many players.</summary>
public sealed record PlannedDivision(Division Division, string Game, int Teams, int BasePath, int Roster);

/// <summary>What the demonstration district is made from: the small tables of demo/oslemoor, as text.</summary>
public sealed record Plan(
    IReadOnlyList<League> Leagues, IReadOnlySet<(string League, string Game)> Plays, IReadOnlyList<PlannedDivision> Divisions,
    IReadOnlyList<Park> Parks, IReadOnlyList<Diamond> Diamonds, IReadOnlyList<string> Given, IReadOnlyList<string> Family, IReadOnlyList<string> TeamNames, IReadOnlyList<Observation> Observations, IReadOnlyList<Ruled> Ruled)
{
    /// <param name="text">Gives the text of a file by its name.</param>
    public static Plan Read(Func<string, string> text)
    {
        var leagues = Rows(text("leagues.csv"));
        var names = text("names.txt").Split('\n').Where(l => l.Contains(": ")).ToDictionary(l => l[..l.IndexOf(':')], l => (IReadOnlyList<string>)l[(l.IndexOf(':') + 2)..].Trim().Split(' '));
        return new(
            [.. leagues.Select(r => new League(r["league"], r["name"]))],
            leagues.SelectMany(r => new[] { "softball", "baseball" }.Where(g => r[g] == "yes").Select(g => (r["league"], g))).ToHashSet(),
            [.. Rows(text("divisions.csv")).Select(r => new PlannedDivision(
                new(r["division"], r["code"], Number(r["crew"]), r["youth base"] == "yes"), r["code"].Split('/')[0], Number(r["teams"]), Number(r["base path"]), Number(r["roster"])))],
            [.. Rows(text("parks.csv")).Select(r => new Park(r["park"], r["name"], double.Parse(r["latitude"], CultureInfo.InvariantCulture), double.Parse(r["longitude"], CultureInfo.InvariantCulture)))],
            [.. Rows(text("diamonds.csv")).Select(r => new Diamond(r["diamond"], r["park"], r["name"], Number(r["base path"]), r["lit"] == "yes", r["bearing"] == "" ? null : Number(r["bearing"])))],
            names["given"], names["family"], names["team"],
            [.. Rows(text("evaluations.csv")).Select(r => new Observation(r["form"], r["about"], r["strength"], r["goal"], r["own view"]))],
            [.. text("questions.txt").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(" | ")).Select(c => new Ruled(c[0], c[1], c[2], c[3], c[4], c[5]))]);
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static List<Dictionary<string, string>> Rows(string text)
    {
        var lines = text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var headers = lines[0].Split(',');
        return [.. lines.Skip(1).Select(l => headers.Zip(l.Split(',')).ToDictionary(x => x.First, x => x.Second))];
    }
}
