namespace Umpirage.District.Crews;

/// <summary>Two places exchanged: the one asked for goes to the partner, the partner's to the one who was asked.</summary>
public sealed record Swap(CrewPerson Person, Seated With, string Place, CrewGame Game)
{
    /// <summary>Exchanges inside the crew first, then with other games of the day, which break nothing new. Checked by the same constraints.</summary>
    public static IReadOnlyList<Swap> For(CrewPlan plan, CrewPerson person, CrewGame game, string place)
    {
        var found = new List<Swap>();
        var other = plan.Seats.Where(s => s.Game.Day == game.Day && s.Person.Key != person.Key && !(s.Game.Key == game.Key && s.Place == place))
            .OrderBy(s => s.Game.Key == game.Key ? 0 : 1).ThenBy(s => s.Game.Start).ThenBy(s => s.Game.Key, StringComparer.Ordinal).ThenBy(s => s.Place, StringComparer.Ordinal);
        foreach (var seat in other)
        {
            var freed = plan.With(seat.Game, seat.Place, null);
            if (WhyNot.Newly(freed, person, seat.Game, seat.Place).Reasons.Count > 0) continue;
            if (WhyNot.Newly(freed.With(seat.Game, seat.Place, person), seat.Person, game, place).Reasons.Count > 0) continue;
            found.Add(new(person, seat, place, game));
        }
        return found;
    }

    public string InWords => $"{With.Person.Name} takes the {Place} of {Game.Key}, {Person.Name} the {With.Place} of {With.Game.Key} at {With.Game.Start:HH:mm}";
}
