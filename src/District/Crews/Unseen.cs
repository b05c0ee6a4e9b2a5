using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>Games that somebody worked in a position since the last visit there, and the next chance to watch one.</summary>
/// <param name="LastSeen">The day of the last visit in that position; nothing when there was none.</param>
/// <param name="By">Trainers who are free then, the nearest to none; not one of the crew.</param>
public sealed record Unseen(CrewPerson Person, Position Position, int Games, DateOnly? LastSeen, CrewGame? Next, IReadOnlyList<CrewPerson> By)
{
    /// <summary>Who has not been seen longest comes first: by games worked unseen, first-year umpires before others.</summary>
    /// <param name="season">A plan that holds the games played, too.</param>
    public static IReadOnlyList<Unseen> Of(CrewPlan season, DateOnly today)
    {
        var visits = season.Records.Visits.ToLookup(v => (v.Person, v.Position));
        var trainers = season.Officials.Where(p => p.Roles.Any(r => r.Role == Role.Trainer)).ToList();
        var list = new List<Unseen>();
        foreach (var person in season.Officials)
            foreach (var position in Enum.GetValues<Position>())
            {
                var own = season.Of(person).Where(s => CrewPlace.PositionOf(s.Place) == position).ToList();
                var last = visits[(person.Key, position)].Select(v => (DateOnly?)v.On).Max();
                var unseen = own.Count(s => s.Game.Day < today && (last is null || s.Game.Day > last));
                var next = own.Where(s => s.Game.Day >= today).OrderBy(s => s.Game.Start).FirstOrDefault();
                if (unseen == 0 && (last is not null || next is null)) continue;
                list.Add(new(person, position, unseen, last, next?.Game, next is null ? [] : [.. trainers.Where(t => t.Key != person.Key && Free(season, t, next.Game)).OrderBy(t => t.Key, StringComparer.Ordinal)]));
            }
        return [.. list.OrderByDescending(u => u.Games).ThenBy(u => u.LastSeen ?? DateOnly.MinValue).ThenByDescending(u => u.Person.Official!.Since).ThenBy(u => u.Person.Key, StringComparer.Ordinal)];
    }

    private static bool Free(CrewPlan plan, CrewPerson trainer, CrewGame game) =>
        plan.DayOf(trainer, game.Day).All(g => g.End <= game.Start || g.Start >= game.End)
        && trainer.Hours.Any(h => h.Day == game.Start.DayOfWeek && h.From <= TimeOnly.FromDateTime(game.Start) && TimeOnly.FromDateTime(game.Start) < h.Until);
}
