using Umpirage.District.Calendar;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Today;

/// <summary>Finds what needs a decision, most urgent first.</summary>
public static class Agenda
{
    /// <summary>How long ahead places without an umpire and lapsing clearances are shown (common practice, no source).</summary>
    private const int DaysAhead = 8, ExpiryDays = 30, DaysToAnswer = 2;

    public static IReadOnlyList<Matter> Of(Day day) =>
    [
        .. OpenPlaces(day).Concat(Swaps(day)).Concat(Unfit(day)).Concat(WithoutGuardian(day)).Concat(Differing(day)).Concat(Rainouts(day)).Concat(Questions(day)).Concat(Proposals(day)).Concat(Expiring(day))
            .OrderBy(m => m.Due.Date).ThenBy(m => m.Kind == MatterKind.Safety ? 0 : 1).ThenBy(m => m.Due).ThenBy(m => m.Kind).ThenBy(m => m.About, StringComparer.Ordinal),
    ];

    private static bool Coming(Day day, ScheduledGame game) => game.Start >= day.Now && game.Start < day.Now.Date.AddDays(DaysAhead) && game.Status is GameStatus.Planned or GameStatus.Moved;

    private static string Name(Day day, ScheduledGame game) => $"{game.Division}, {Team(day, game.Visitor)} at {Team(day, game.Home)}";

    private static string Team(Day day, string key) => day.Teams.GetValueOrDefault(key, key);

    /// <summary>Games of today and tomorrow each, later ones by the day. A youth base is wanted, not required.</summary>
    private static IEnumerable<Matter> OpenPlaces(Day day)
    {
        var open = day.Places.Where(p => p.Person is null && !p.Place.StartsWith("youth", StringComparison.Ordinal)).ToLookup(p => p.Game);
        var games = day.Games.Where(g => Coming(day, g) && open[g.Key].Any()).ToLookup(g => g.Start < day.Now.Date.AddDays(2));
        foreach (var game in games[true])
            yield return new(MatterKind.OpenPlace, game.Start, $"No umpire: {Rules.Ground.Words.And([.. open[game.Key].Select(p => p.Place)])}", Name(day, game), game.Key);
        foreach (var later in games[false].GroupBy(g => g.Start.Date))
            yield return new(MatterKind.OpenPlace, later.Min(g => g.Start), $"{later.Sum(g => open[g.Key].Count())} places without an umpire", $"in {later.Count()} games", "");
    }

    /// <summary>A swap that nobody answered is too late once one of its games begins.</summary>
    private static IEnumerable<Matter> Swaps(Day day)
    {
        foreach (var (swap, game, other) in day.Swaps.Where(s => s.Swap.IsOpen))
        {
            var due = other is not null && other.Start < game.Start ? other.Start : game.Start;
            if (due > day.Now) yield return new(MatterKind.Swap, due, swap.IsAgreed ? "A swap waits to be confirmed" : "A swap waits for your answer", $"{swap.Place}; {Name(day, game)}", swap.Key);
        }
    }

    /// <summary>A clearance has to hold through the game itself.</summary>
    private static IEnumerable<Matter> Unfit(Day day)
    {
        var clearances = day.Clearances.ToLookup(c => c.Person);
        var places = day.Places.Where(p => p.Person is not null).ToLookup(p => p.Game);
        var names = day.People.ToDictionary(p => p.Key);
        foreach (var game in day.Games.Where(g => Coming(day, g)))
            foreach (var place in places[game.Key])
            {
                // whoever may see no clearances is handed none at all
                if (day.Clearances.Count > 0 && !clearances[place.Person!].Any())
                    yield return new(MatterKind.Safety, game.Start, $"{names.GetValueOrDefault(place.Person!)?.ListName ?? "somebody"} may not be assigned: no clearance on record", $"{place.Place}; {Name(day, game)}", game.Key);
                foreach (var none in clearances[place.Person!].GroupBy(c => c.Requirement)
                    .Where(r => r.All(c => c.Until < DateOnly.FromDateTime(game.Start) || c.From > DateOnly.FromDateTime(game.Start))))
                    yield return new(MatterKind.Safety, game.Start,
                        $"{names.GetValueOrDefault(place.Person!)?.ListName ?? "somebody"} may not be assigned: {none.Key} {Outside(none, DateOnly.FromDateTime(game.Start))}",
                        $"{place.Place}; {Name(day, game)}", game.Key);
            }
    }

    private static string Outside(IEnumerable<Clearance> clearances, DateOnly on) => clearances.Where(c => c.Until < on).ToList() is { Count: > 0 } past
        ? $"ran out {Rules.Ground.CodeAddress.Day(past.Max(c => c.Until))}" : $"begins {Rules.Ground.CodeAddress.Day(clearances.Min(c => c.From))}";

    private static IEnumerable<Matter> WithoutGuardian(Day day)
    {
        var guarded = day.Guardianships.Select(g => g.Child).ToHashSet();
        return day.People.Where(p => p.IsMinor && !guarded.Contains(p.Key)).Select(p => new Matter(MatterKind.Safety, day.Now, $"{p.ListName} has no guardian on record", "nobody can write to a minor alone", p.Key));
    }

    /// <summary>Two counts of one pitcher have to be settled before that team plays again.</summary>
    private static IEnumerable<Matter> Differing(Day day)
    {
        var games = day.Games.ToDictionary(g => g.Key);
        foreach (var twice in Appearance.Standing(day.Logs).GroupBy(l => (l.Game, l.Player)).Where(g => g.GroupBy(l => l.Day).Any(d => d.Select(l => l.Count).Distinct().Count() > 1)))
        {
            if (!games.TryGetValue(twice.Key.Game, out var game)) continue;
            var team = twice.First().Team;
            var next = day.Games.Where(g => g.Start >= day.Now && g.Status is GameStatus.Planned or GameStatus.Moved && (g.Home == team || g.Visitor == team))
                .Select(g => (DateTime?)g.Start).Min();
            yield return new(MatterKind.CountsDiffer, next ?? game.Start.Date.AddDays(14), $"Two counts differ: {Rules.Ground.Words.And([.. twice.Select(l => $"{l.Pitches} pitches ({l.Counter})")])}", $"{Name(day, game)}, {Rules.Ground.CodeAddress.Day(DateOnly.FromDateTime(game.Start))}", game.Key);
        }
    }

    private static IEnumerable<Matter> Rainouts(Day day) =>
        day.Games.Where(g => g.Status == GameStatus.RainedOut && g.Start > day.Now.AddDays(-14)).Select(g => new Matter(MatterKind.Rainout, g.Start.Date.AddDays(14), "Rained out, no new date", Name(day, g), g.Key));

    private static IEnumerable<Matter> Questions(Day day) =>
        day.Questions.Where(q => q.Open).Select(q => new Matter(MatterKind.Question, q.At.AddDays(DaysToAnswer), "Question not answered yet", q.Words, q.Key));

    private static IEnumerable<Matter> Proposals(Day day) =>
        day.Options.Where(o => o.Status == OptionStatus.Proposed).Select(o => new Matter(MatterKind.Proposal, o.At.AddDays(7), $"Local option proposed: {o.Layer}", $"version {o.Version}, by {o.By}", o.Layer));

    /// <summary>Clearances about to run out, each; those that have run out, together: nobody can be assigned before they are renewed.</summary>
    private static IEnumerable<Matter> Expiring(Day day)
    {
        var names = day.People.ToDictionary(p => p.Key);
        var today = DateOnly.FromDateTime(day.Now);
        var held = day.Clearances.Where(c => names.ContainsKey(c.Person)).GroupBy(c => (c.Person, c.Requirement)).Select(g => (g.Key.Person, g.Key.Requirement, Until: g.Max(c => c.Until))).ToList();
        foreach (var (person, requirement, until) in held.Where(h => h.Until >= today && h.Until <= today.AddDays(ExpiryDays)))
            yield return new(MatterKind.Expiring, until.ToDateTime(new(23, 59)), $"{names[person].ListName}: {requirement} runs out", "no games after that day until it is renewed", person);
        List<string> lapsed = [.. held.Where(h => h.Until < today).Select(h => names[h.Person].ListName).Distinct().Order(StringComparer.Ordinal)];
        if (lapsed.Count > 0)
            yield return new(MatterKind.Lapsed, day.Now.Date.AddDays(DaysAhead - 1), $"{lapsed.Count} {(lapsed.Count == 1 ? "umpire" : "umpires")} may not be assigned: a clearance ran out", Rules.Ground.Words.And(lapsed), "");
    }
}
