using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>Games that somebody worked in a position since the last visit there, and the next chance to watch one.</summary>
/// <param name="LastSeen">The day of the last visit in that position; nothing when there was none.</param>
/// <param name="Next">The next game in which a trainer could watch; where there is none, the next game.</param>
/// <param name="By">Trainers who are free then and have no interest in the game or the umpire; not one of the crew.</param>
public sealed record Unseen(CrewPerson Person, Position Position, int Games, DateOnly? LastSeen, CrewGame? Next, IReadOnlyList<CrewPerson> By)
{
    /// <summary>Who has not been seen longest comes first: by games worked unseen, first-year umpires before others.</summary>
    /// <param name="season">A plan that holds the games played, too.</param>
    public static IReadOnlyList<Unseen> Of(CrewPlan season, DateTime now)
    {
        var visits = season.Records.Visits.ToLookup(v => (v.Person, v.Position));
        var trainers = season.Officials.Where(p => p.Roles.Any(r => r.Role == Role.Trainer)).ToList();
        var list = new List<Unseen>();
        foreach (var person in season.Officials)
            foreach (var position in Enum.GetValues<Position>())
            {
                var own = season.Of(person).Where(s => CrewPlace.PositionOf(s.Place) == position).ToList();
                var last = visits[(person.Key, position)].Select(v => (DateOnly?)v.On).Max();
                var unseen = own.Count(s => s.Game.Start < now && (last is null || s.Game.Day > last));
                var coming = own.Where(s => s.Game.Start >= now).OrderBy(s => s.Game.Start).Select(s => s.Game).ToList();
                if (unseen == 0 && (last is not null || coming.Count == 0)) continue;
                var chances = coming.Select(g => (Game: g, By: trainers.Where(t => Free(season, t, person, g)).OrderBy(t => t.Key, StringComparer.Ordinal).ToList()));
                var (next, by) = chances.FirstOrDefault(c => c.By.Count > 0, (coming.FirstOrDefault()!, []));
                list.Add(new(person, position, unseen, last, next, by));
            }
        return [.. list.OrderByDescending(u => u.Games).ThenBy(u => u.LastSeen ?? DateOnly.MinValue).ThenByDescending(u => u.Person.Official!.Since).ThenBy(u => u.Person.Key, StringComparer.Ordinal)];
    }

    private static readonly Constraints.NoInterest Interest = new();

    private static bool Free(CrewPlan plan, CrewPerson trainer, CrewPerson umpire, CrewGame game) =>
        trainer.Key != umpire.Key && !umpire.Guardians.Contains(trainer.Key) && !Interest.Find(plan, new(game, CrewPlace.Base, trainer)).Any()
        && plan.DayOf(trainer, game.Day).All(g => g.End <= game.Start || g.Start >= game.End)
        && !trainer.Aways.Any(a => a.On(game.Day)) && trainer.Hours.Any(h => h.Day == game.Start.DayOfWeek && h.From <= TimeOnly.FromDateTime(game.Start) && TimeOnly.FromDateTime(game.Start) < h.Until);
}
