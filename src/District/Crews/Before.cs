namespace Umpirage.District.Crews;

/// <summary>What an umpire's day holds before a place: the day's games up to it, and those elsewhere at whatever hour, for only the places of a plan can be changed.</summary>
internal static class Before
{
    public static List<DayGame> Of(CrewPlan plan, Seated seat)
    {
        var list = new List<DayGame>();
        var passed = false;
        foreach (var game in plan.DayOf(seat.Person, seat.Game.Day))
        {
            if (game.Seated is { } other && other.Place == seat.Place && other.Game.Key == seat.Game.Key) { passed = true; continue; }
            if (!passed || game.Seated is null) list.Add(game);
        }
        return list;
    }
}
