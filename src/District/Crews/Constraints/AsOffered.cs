using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>No more games in a week, Monday to Sunday, than the umpire offered; whoever is asked for more may say no.</summary>
public sealed record AsOffered() : CrewConstraint("games offered", "Nobody is given more games in a week than offered.", Hold.Wish)
{
    public override Citation Source => Common("games as the umpire offered them");

    /// <summary>The Monday of a day's week.</summary>
    public static DateOnly Monday(DateOnly day) => day.AddDays(-((int)day.DayOfWeek + 6) % 7);

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (seat.Person.Official is not { } official) yield break;
        var monday = Monday(seat.Game.Day);
        var before = plan.Of(seat.Person).Count(s => Monday(s.Game.Day) == monday && (s.Game.Start < seat.Game.Start || (s.Game.Start == seat.Game.Start && string.CompareOrdinal(s.Game.Key, seat.Game.Key) < 0)));
        if (before + 1 > official.GamesAWeek) yield return Broken(seat, FormattableString.Invariant($"offered {official.GamesAWeek} a week; it would be number {before + 1}"));
    }
}
