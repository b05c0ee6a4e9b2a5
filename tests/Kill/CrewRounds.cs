using System.Security.Cryptography;
using System.Text;
using Umpirage.District.Crews;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Solve.Crews;
using Umpirage.Store;

namespace Umpirage.Kill;

/// <summary>
/// Searches the crews of a night and writes them, then opens every place again, round after round. The sign of a plan is said before the store hears of
/// it ("trying SIGN") and when it has answered ("done SIGN").
/// </summary>
internal sealed class CrewRounds(string codes, Place place, DateOnly night)
{
    public void Run()
    {
        var book = Codebook.Read(new SourceText("roster.txt", File.ReadAllText(Path.Combine(codes, "roster.txt"))),
            ((string[])["sheets", "layers"]).SelectMany(f => Directory.EnumerateFiles(Path.Combine(codes, f)).Order(StringComparer.Ordinal)).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))));
        var umpires = UmpiresCodes.For(book);
        for (var round = 1; ; round++)
        {
            using var store = place.Open();
            (store.Actor, store.Codes, store.Today) = ("kill", () => book, night.AddDays(-3));
            var plan = CrewPlan.Of(CrewReader.Read(store), umpires);
            List<CrewGame> games = [.. plan.Games.Where(g => g.Day == night && g.Division.Crew > 0).OrderBy(g => g.Key, StringComparer.Ordinal)];
            var found = games.SelectMany(plan.CrewOf).Any() ? plan.Without(games) : CrewSearch.Find(new CrewTask(plan, games, Seconds: 1, Workers: 1, Seed: round)).Plan;
            var sign = Sign(games.SelectMany(found.CrewOf).Select(s => $"{s.Game.Key}/{s.Place}={s.Person.Key}"));
            Say($"trying {sign}");
            if (CrewKeeping.Keep(store, plan, found, games) is { Count: > 0 } faults) throw new InvalidOperationException(faults[0]);
            Say($"done {sign}");
        }
    }

    private static string Sign(IEnumerable<string> seats) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', seats.Order(StringComparer.Ordinal)))))[..16];

    private static void Say(string line)
    {
        Console.Out.WriteLine(line);
        Console.Out.Flush();
    }
}
