using Umpirage.District.Calendar;
using Umpirage.District.Options;
using Umpirage.District.People;

namespace Umpirage.District.Today;

/// <summary>Finds what needs a decision, most urgent first.</summary>
public static class Agenda
{
    /// <summary>How long ahead places without an umpire and lapsing clearances are shown (common practice, no source).</summary>
    private const int DaysAhead = 8, ExpiryDays = 30, DaysToAnswer = 2;

    public static IReadOnlyList<Matter> Of(Day day) =>
    [
        .. OpenPlaces(day).Concat(Unfit(day)).Concat(WithoutGuardian(day)).Concat(Differing(day)).Concat(Rainouts(day)).Concat(Questions(day)).Concat(Proposals(day)).Concat(Expiring(day))
            .OrderBy(m => m.Due.Date).ThenBy(m => m.Kind == MatterKind.Safety ? 0 : 1).ThenBy(m => m.Due).ThenBy(m => m.Kind).ThenBy(m => m.About, StringComparer.Ordinal),
    ];

    private static bool Coming(Day day, ScheduledGame game) => game.Start >= day.Now && game.Start < day.Now.Date.AddDays(DaysAhead) && game.Status is GameStatus.Planned or GameStatus.Moved;

    private static string Name(Day day, ScheduledGame game) => $"{game.Division}, {Team(day, game.Visitor)} at {Team(day, game.Home)}";

    private static string Team(Day day, string key) => day.Teams.GetValueOrDefault(key, key);

    /// <summary>A youth base is wanted, not required.</summary>
    private static IEnumerable<Matter> OpenPlaces(Day day)
    {
        var open = day.Places.Where(p => p.Person is null && !p.Place.StartsWith("youth", StringComparison.Ordinal)).ToLookup(p => p.Game);
        foreach (var game in day.Games.Where(g => Coming(day, g) && open[g.Key].Any()))
            yield return new(MatterKind.OpenPlace, game.Start, $"No umpire: {Rules.Ground.Words.And([.. open[game.Key].Select(p => p.Place)])}", Name(day, game), game.Key);
    }

    /// <summary>A clearance has to hold through the game itself.</summary>
    private static IEnumerable<Matter> Unfit(Day day)
    {
        var clearances = day.Clearances.ToLookup(c => c.Person);
        var places = day.Places.Where(p => p.Person is not null).ToLookup(p => p.Game);
        var names = day.People.ToDictionary(p => p.Key);
        foreach (var game in day.Games.Where(g => Coming(day, g)))
            foreach (var place in places[game.Key])
                foreach (var lapsed in clearances[place.Person!].GroupBy(c => c.Requirement).Where(r => r.All(c => c.Until < DateOnly.FromDateTime(game.Start) || c.From > DateOnly.FromDateTime(game.Start))))
                    yield return new(MatterKind.Safety, game.Start, $"{names.GetValueOrDefault(place.Person!)?.ListName ?? "somebody"} may not be assigned: {lapsed.Key} ran out {Rules.Ground.CodeAddress.Day(lapsed.Max(c => c.Until))}", $"{place.Place}; {Name(day, game)}", game.Key);
    }

    private static IEnumerable<Matter> WithoutGuardian(Day day)
    {
        var guarded = day.Guardianships.Select(g => g.Child).ToHashSet();
        return day.People.Where(p => p.IsMinor && !guarded.Contains(p.Key)).Select(p => new Matter(MatterKind.Safety, day.Now, $"{p.ListName} has no guardian on record", "nobody can write to a minor alone", p.Key));
    }

    private static IEnumerable<Matter> Differing(Day day)
    {
        var games = day.Games.ToDictionary(g => g.Key);
        foreach (var twice in day.Logs.GroupBy(l => (l.Game, l.Player)).Where(g => g.Select(l => (l.Pitches, l.BeforeLastBatter, l.Innings)).Distinct().Count() > 1))
            if (games.TryGetValue(twice.Key.Game, out var game) && game.Start > day.Now.AddDays(-DaysAhead))
                yield return new(MatterKind.CountsDiffer, game.Start.Date.AddDays(1), $"Two counts differ: {Rules.Ground.Words.And([.. twice.Select(l => $"{l.Pitches} pitches ({l.Counter})")])}", Name(day, game), game.Key);
    }

    private static IEnumerable<Matter> Rainouts(Day day) =>
        day.Games.Where(g => g.Status == GameStatus.RainedOut && g.Start > day.Now.AddDays(-14)).Select(g => new Matter(MatterKind.Rainout, g.Start.Date.AddDays(14), "Rained out, no new date", Name(day, g), g.Key));

    private static IEnumerable<Matter> Questions(Day day) =>
        day.Questions.Where(q => q.Open).Select(q => new Matter(MatterKind.Question, q.At.AddDays(DaysToAnswer), "Question not answered yet", q.Words, q.Key));

    private static IEnumerable<Matter> Proposals(Day day) =>
        day.Options.Where(o => o.Status == OptionStatus.Proposed).Select(o => new Matter(MatterKind.Proposal, o.At.AddDays(7), $"Local option proposed: {o.Layer}", $"version {o.Version}, by {o.By}", o.Layer));

    private static IEnumerable<Matter> Expiring(Day day)
    {
        var names = day.People.ToDictionary(p => p.Key);
        var today = DateOnly.FromDateTime(day.Now);
        foreach (var held in day.Clearances.GroupBy(c => (c.Person, c.Requirement)))
            if (held.Max(c => c.Until) is var until && until >= today.AddDays(-ExpiryDays) && until <= today.AddDays(ExpiryDays) && names.TryGetValue(held.Key.Person, out var person))
                yield return new(MatterKind.Expiring, until.ToDateTime(new(23, 59)), until < today ? $"{person.ListName}: {held.Key.Requirement} ran out" : $"{person.ListName}: {held.Key.Requirement} runs out", "no games after that day until it is renewed", person.Key);
    }
}
