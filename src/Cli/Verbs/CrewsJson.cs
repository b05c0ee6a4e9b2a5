using Umpirage.District.Crews;
using Umpirage.Solve.Crews;

namespace Umpirage.Cli.Verbs;

/// <summary>Answers about crews as plain objects for programs: keys, never contacts.</summary>
internal static class CrewsJson
{
    public static object Of(Breach b) => new { constraint = b.Constraint, hold = CrewWords.HoldWord(b.Hold), game = b.Game, place = b.Place, person = b.Person, said = b.Said, source = b.Source.ToString() };

    public static object Of(WhyNot why) => new
    {
        person = why.Person.Key, game = why.Game.Key, place = why.Place, may = why.May, reasons = why.Reasons.Select(Of), wishes = why.Wishes.Select(Of), heat = why.Heat,
        instead = why.Instead is { } i ? new { position = i.Position.ToString().ToLowerInvariant(), from = i.From } : null,
    };

    public static object Of(Substitute s) => new
    {
        person = s.Person.Key, standing = CrewWords.StandingWord(s.Standing), minutes = s.Minutes, arrives = s.Arrives, reasons = s.Reasons.Select(Of), wishes = s.Wishes.Select(Of),
        opens = s.Opens.Select(o => new { game = o.Game.Key, place = o.Place }), later = s.Later.Select(l => l.InWords),
    };

    public static object Of(CallUp call) => new
    {
        game = call.Game.Key, called = call.Called.Select(c => new { place = c.Place, who = Of(c.Who) }), open = call.StillOpen, oneUmpireUntil = call.OneUmpireUntil, startsLate = call.StartsLate,
        backups = call.Backups.Select(Of), rejected = call.Rejected.Select(Of),
    };

    public static object Of(Forecast f) => new
    {
        monday = f.Monday, required = f.Required, offered = f.Offered, filled = f.Filled, nights = f.Nights.Select(n => new { day = n.Day, games = n.Games, required = n.Required, supply = n.Supply, plates = n.Plates, plateSupply = n.PlateSupply }),
        moves = f.Moves.Select(m => new { from = m.From, to = m.To, gains = m.Gains }), leagues = f.Leagues.Select(l => new { league = l.League.Key, required = l.Required, offered = l.Offered, twoGameVolunteers = l.TwoGameVolunteers }),
    };

    public static object Of(CrewResult r, CrewTask task, bool saved) => new
    {
        games = task.Games.Count, seconds = r.Seconds, stopped = r.Stopped, saved, stages = r.Stages.Select(s => new { priority = s.Priority, value = s.Value, bound = s.Bound, gap = s.Gap }),
        crews = r.Plan.Assignments(task.Games), open = r.Open.Select(o => new { game = o.Game.Key, place = o.Place, keptBy = o.KeptBy.ToDictionary(k => k.Constraint, k => k.People), forOneMore = o.ForOneMore.Select(p => p.Key) }),
        changes = r.Changes.Select(c => new { game = c.Game.Key, place = c.Place, from = c.From?.Key, to = c.To?.Key }), recounted = r.Recounted.Select(Of),
    };
}
