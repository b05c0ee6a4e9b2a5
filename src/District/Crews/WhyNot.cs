using System.Globalization;
using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>From when on somebody could work another place of the same game; the game itself would have to start then.</summary>
public sealed record InsteadAt(Position Position, DateTime From);

/// <summary>Every reason for no, or none, for one person and one place of a game.</summary>
/// <param name="Reasons">What giving the place would newly break, safety and rules, at this place and at others.</param>
/// <param name="Wishes">What it would break besides, without being a no.</param>
/// <param name="Heat">How the day's heat index lies to the danger band; nothing when none is on record.</param>
/// <param name="Instead">What would be possible instead of a plate, or later; nothing when the answer is yes.</param>
public sealed record WhyNot(CrewPerson Person, CrewGame Game, string Place, IReadOnlyList<Breach> Reasons, IReadOnlyList<Breach> Wishes, string? Heat, InsteadAt? Instead)
{
    public bool May => Reasons.Count == 0;

    /// <summary>All that stands against it passes with time.</summary>
    public bool OnlyPassing => Reasons.Count > 0 && Reasons.All(r => r.Passing && r.Person == Person.Key);

    /// <summary>How far a later start is looked for, in minutes.</summary>
    private const int Ahead = 240;

    public static WhyNot Of(CrewPlan plan, CrewPerson person, CrewGame game, string place, bool instead = true)
    {
        var (reasons, wishes) = Newly(plan, person, game, place);
        return new(person, game, place, reasons, wishes, HeatOf(plan, game), reasons.Count == 0 || !instead ? null : InsteadOf(plan, person, game, place));
    }

    /// <summary>For every place of the game's crew.</summary>
    public static IReadOnlyList<WhyNot> Of(CrewPlan plan, CrewPerson person, CrewGame game) => [.. CrewPlace.Of(game.Division).Select(p => Of(plan, person, game, p))];

    internal static (IReadOnlyList<Breach> Reasons, IReadOnlyList<Breach> Wishes) Newly(CrewPlan plan, CrewPerson person, CrewGame game, string place)
    {
        // whoever holds the place makes room, and so does the person's own other place in the same crew
        var empty = plan.With(game, place, null);
        foreach (var own in plan.CrewOf(game).Where(s => s.Person.Key == person.Key && s.Place != place)) empty = empty.With(game, own.Place, null);
        return CrewCheck.Newly(empty, empty.With(game, place, person), [person], [game]);
    }

    /// <summary>How the heat index of the day lies to the danger band; nothing when none is on record.</summary>
    public static string? HeatOf(CrewPlan plan, CrewGame game)
    {
        if (plan.HeatOn(game.Day) is not { } f) return null;
        var away = f - game.Code.DangerFrom;
        var more = game.Code.FurtherBreaks(f) is null ? "" : "; a further break in each half-inning, and play itself may have to stop";
        return string.Create(CultureInfo.InvariantCulture, $"heat index {f:0.0} F: {(away < 0 ? $"{-away:0.0} below" : "in")} the danger band, which begins at {game.Code.DangerFrom:0}{more}");
    }

    private static InsteadAt? InsteadOf(CrewPlan plan, CrewPerson person, CrewGame game, string place)
    {
        string[] places = place == CrewPlace.Plate ? [CrewPlace.Plate, CrewPlace.Base] : [place];
        foreach (var other in places)
        {
            // a place that the division has not is asked for all the same: somewhere else it may be free
            bool Against(IReadOnlyList<Breach> reasons, bool alsoPassing) => reasons.Any(r => (alsoPassing || !r.Passing) && r.Constraint != "place");
            if (Against(Newly(plan, person, game, other).Reasons, false)) continue;
            for (var minute = 0; minute <= Ahead; minute++)
            {
                var start = game.Start.AddMinutes(minute);
                if (start.Date != game.Start.Date) break;
                var later = plan.At(game, start);
                if (!Against(Newly(later, person, later.Game(game.Key)!, other).Reasons, true)) return new(CrewPlace.PositionOf(other), start);
            }
        }
        return null;
    }
}
