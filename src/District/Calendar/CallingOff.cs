using Umpirage.District.People;

namespace Umpirage.District.Calendar;

/// <summary>Who has to be told of a game's change, and until when that is in time. Whom to reach for a minor is a guardian's key, never the minor's.</summary>
/// <param name="NobodyFor">Minors of the crew without a guardian on record: nobody can be told for them.</param>
public sealed record Notice(string Game, IReadOnlyList<string> Tell, IReadOnlyList<string> NobodyFor, DateTime By, bool InTime);

/// <summary>What somebody of a crew is owed for a game called off too late, in the code's words, with its source.</summary>
public sealed record FeeOwed(string Game, string Place, string Person, string Share, string Source);

/// <summary>A place of a moved game's crew: its holder keeps it, and is to be asked again; by the weekly hours on record free then or not.</summary>
public sealed record PlaceToAsk(string Game, string Place, string Person, bool FreeThen);

/// <summary>What follows from a plan: messages owed, fees, crews to be asked again.</summary>
public sealed record Aftermath(IReadOnlyList<Notice> Notices, IReadOnlyList<FeeOwed> Fees, IReadOnlyList<PlaceToAsk> ToAsk);

/// <summary>Works out what follows from a plan when teams and crews are told at a moment.</summary>
public static class CallingOff
{
    /// <summary>A crew is at the park so long before the start (common practice, no source).</summary>
    private static readonly TimeSpan CrewComes = TimeSpan.FromMinutes(30);

    public static Aftermath Of(
        Schedule schedule, Replan plan, IReadOnlyCollection<Assignment> crews, IReadOnlyDictionary<string, Person> people, IEnumerable<RoleHeld> roles, IEnumerable<Guardianship> guardianships, IEnumerable<Availability> hours, DateTime told)
    {
        var managers = roles.Where(r => r.Role == Role.Manager).ToLookup(r => r.Team, r => r.Person);
        var (guardians, free, places) = (guardianships.ToLookup(g => g.Child, g => g.Guardian), hours.ToLookup(h => h.Person), crews.Where(c => c.Person is not null).ToLookup(c => c.Game));
        List<Notice> notices = [];
        List<FeeOwed> fees = [];
        List<PlaceToAsk> ask = [];
        foreach (var (game, to) in plan.Moves.Select(m => (m.From, (ScheduledGame?)m.To)).Concat(plan.Without.Select(w => (w.Game, (ScheduledGame?)null))))
        {
            var code = schedule.CodeOf(game);
            var crew = places[game.Key].OrderBy(c => c.Place, StringComparer.Ordinal).ToList();
            bool Minor(Assignment c) => people.TryGetValue(c.Person!, out var p) && p.IsMinor;
            // what was rained out before was called off before
            var calledOff = game.IsAhead ? code.CalledOff(Math.Max(0, (game.Start - told).TotalHours), told >= game.Start - CrewComes) : null;
            notices.Add(new(game.Key,
                [.. managers[game.Visitor].Concat(managers[game.Home]).Concat(crew.SelectMany(c => Minor(c) ? guardians[c.Person!] : [c.Person!])).Distinct()],
                [.. crew.Where(c => Minor(c) && !guardians[c.Person!].Any()).Select(c => c.Person!)],
                (game.IsAhead || to is null ? game : to).Start.AddHours(-code.NoticeHours), calledOff?.InTime ?? true));
            if (calledOff is { InTime: false } late)
                fees.AddRange(crew.Select(c => new FeeOwed(game.Key, c.Place, c.Person!, late.Owed, $"{late.Because.Sheet} {late.Because.Rule}; {late.Because.Source}")));
            if (to is not null)
                ask.AddRange(crew.Select(c => new PlaceToAsk(game.Key, c.Place, c.Person!, free[c.Person!].Any(h => h.Day == to.Start.DayOfWeek && h.From <= TimeOnly.FromDateTime(to.Start) && TimeOnly.FromDateTime(schedule.End(to)) <= h.Until))));
        }
        return new(notices, fees, ask);
    }
}
