namespace Umpirage.District.Crews;

/// <summary>Finds who could fill a hole: legal ones first, then those to be moved, then backups, then everybody else with the reasons for no.</summary>
public static class Subs
{
    /// <summary>In the order in which to call: who is there in time, breaks the least, has had the smallest share of the week, and is nearest.</summary>
    public static IReadOnlyList<Substitute> For(CrewPlan plan, CrewGame game, string place, Calling calling)
    {
        var asked = plan.Officials.Where(p => calling.Of is null || calling.Of.Contains(p.Key)).Where(p => plan.CrewOf(game).All(s => s.Person.Key != p.Key));
        return
        [
            .. asked.Select(p => Of(plan, game, place, p, calling)).OrderBy(s => s.Standing).ThenBy(s => s.InTime(game) ? 0 : 1).ThenBy(s => s.Opens.Count).ThenBy(s => s.Wishes.Count)
                .ThenBy(s => s.Arrives ?? DateTime.MaxValue).ThenBy(s => s.WeekShare).ThenBy(s => s.Minutes ?? int.MaxValue).ThenBy(s => s.Person.Key, StringComparer.Ordinal),
        ];
    }

    /// <summary>One person for one place.</summary>
    public static Substitute Of(CrewPlan plan, CrewGame game, string place, CrewPerson person, Calling calling)
    {
        var why = Asked(plan, person, game, place, calling);
        var (minutes, arrives) = Arrival(plan, person, game, calling);
        var day = plan.DayOf(person, game.Day);
        List<DayGame> later = [.. day.Where(g => g.Start >= game.Start)];
        var standing = why.May ? Standby.Legal : Standby.No;
        IReadOnlyList<Breach> reasons = why.Reasons, wishes = why.Wishes;
        List<Seated> opens = [];
        if (why.OnlyPassing)
        {
            // a place that has not begun yet can be given up; one under way cannot
            List<Seated> given = [.. plan.Of(person).Where(s => s.Game.Day == game.Day && Near(s.Game, game) && (calling.Now is not { } now || s.Game.Start > now))];
            var freed = given.Aggregate(plan, (p, s) => p.With(s.Game, s.Place, null));
            if (given.Count > 0 && Asked(freed, person, game, place, calling) is { May: true } moved) (standing, opens, reasons, wishes) = (Standby.Moved, given, [], moved.Wishes);
            else
            {
                standing = Standby.Backup;
                if (arrives is { } at && at > game.Start && plan.At(game, at) is var then) reasons = Asked(then, person, then.Game(game.Key)!, place, calling).Reasons;
            }
        }
        return new(person, standing, minutes, arrives, reasons, wishes, opens, later, Share(plan, person, game));
    }

    /// <summary>Who said how far away they are is believed: the reckoning of the way does not count then.</summary>
    private static WhyNot Asked(CrewPlan plan, CrewPerson person, CrewGame game, string place, Calling calling)
    {
        var why = WhyNot.Of(plan, person, game, place, instead: false);
        return calling.Minutes?.ContainsKey(person.Key) == true ? why with { Reasons = [.. why.Reasons.Where(r => r.Constraint != Way.Name || r.Person != person.Key)] } : why;
    }

    private static readonly CrewConstraint Way = new Constraints.TimeToTravel();

    private static bool Near(CrewGame one, CrewGame other) => one.Start < other.End.AddHours(1) && other.Start < one.End.AddHours(1);

    private static (int? Minutes, DateTime? Arrives) Arrival(CrewPlan plan, CrewPerson person, CrewGame game, Calling calling)
    {
        var typed = calling.Minutes is not null && calling.Minutes.TryGetValue(person.Key, out var said) ? said : (int?)null;
        var day = plan.DayOf(person, game.Day);
        var last = day.LastOrDefault(g => g.Seated is not null && g.Start <= game.Start && g.Seated.Game.Key != game.Key)?.Seated?.Game;
        if (calling.Now is not { } now) return (typed ?? (last is not null ? Journey.Minutes(last, game) : Journey.Minutes(person, game)), null);
        var busy = day.Where(g => g.Start <= now && g.End > now).Select(g => (DateTime?)g.End).Max();
        var minutes = typed ?? (last is not null && last.Start <= now ? Journey.Minutes(last, game) : Journey.Minutes(person, game));
        if (minutes is not { } way) return (null, null);
        var arrives = now.AddMinutes(way);
        // who says how far away while on a field is near: what is left is the change of fields
        if (busy is { } free && free.AddMinutes(typed is null ? way : game.Code.FieldMinutes) is var then && then > arrives) arrives = then;
        return ((int)(arrives - now).TotalMinutes, arrives);
    }

    private static double Share(CrewPlan plan, CrewPerson person, CrewGame game)
    {
        var monday = Constraints.AsOffered.Monday(game.Day);
        return plan.Of(person).Count(s => Constraints.AsOffered.Monday(s.Game.Day) == monday) / Math.Max(0.5, person.Official?.GamesAWeek ?? 1);
    }
}
