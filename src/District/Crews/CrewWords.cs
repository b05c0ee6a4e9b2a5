using System.Globalization;

namespace Umpirage.District.Crews;

/// <summary>Answers about crews in words, for screens, paper and the terminal alike.</summary>
public static class CrewWords
{
    private static string Clock(DateTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>"Sat 16 May 14:00, BB 9-10, Jarrowden Owls at Tarnholt Terns, Tarnholt Mill 2".</summary>
    public static string Game(CrewGame game) => string.Create(CultureInfo.InvariantCulture, $"{game.Start:ddd d MMM HH:mm}, {game.Division.Key}, {game.Visitor.Name} at {game.Home.Name}, {game.Diamond.Name}");

    public static string HoldWord(Hold hold) => hold switch { Hold.Safety => "safety", Hold.Rule => "rule", _ => "wish" };

    public static string Breach(Breach breach) => $"{breach.Constraint} ({HoldWord(breach.Hold)}): {breach.InWords}";

    /// <summary>
    /// A reason as the umpire may read it whom it is about. What concerns somebody else, and a request to be kept apart, which is nobody's business,
    /// stays with the assigner.
    /// </summary>
    public static string OwnReason(Breach breach, IReadOnlyCollection<string> readers) =>
        !readers.Contains(breach.Person) ? "it would break something for another umpire; the assigner knows what"
        : breach.Constraint == Apart ? "not in this crew; the assigner knows why" : breach.Named;

    private static readonly string Apart = new Constraints.KeptApart().Name;

    /// <summary>The answer for one place: yes or no, every reason, and what would be possible instead.</summary>
    public static IReadOnlyList<string> Why(WhyNot why)
    {
        var lines = new List<string> { why.May ? $"{why.Person.Name} may have the {why.Place}." : $"{why.Person.Name} may not have the {why.Place}:" };
        lines.AddRange(why.Reasons.Select(r => $"  {Breach(r)}{(r.Person == why.Person.Key && r.Game == why.Game.Key ? "" : $" [{r.Place} of {r.Game}]")}"));
        if (why.Wishes.Count > 0) lines.Add($"  besides: {string.Join("; ", why.Wishes.Select(w => w.Said))}");
        if (why.Heat is { } heat) lines.Add($"  {heat}");
        if (why.Instead is { } instead) lines.Add($"  instead: {Instead(instead)} from {Clock(instead.From)} on");
        return lines;
    }

    public static string Instead(InsteadAt instead) => PlaceWord(instead.Position == People.Position.Plate ? CrewPlace.Plate : CrewPlace.Base);

    /// <summary>A place as it is spoken of: "the plate", "the bases".</summary>
    public static string PlaceWord(string place) => place switch { CrewPlace.Plate => "the plate", CrewPlace.Base => "the bases", CrewPlace.YouthBase => "the youth base", _ => $"the place '{place}'" };

    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth"];

    private static string Ordinal(int number) => number <= Ordinals.Length ? Ordinals[number - 1] : string.Create(CultureInfo.InvariantCulture, $"number {number}");

    /// <summary>What the place would be in somebody's day: "third game and second plate of the day, 280 min after the last; nothing later that day".</summary>
    public static string DayWith(CrewPlan plan, CrewPerson person, CrewGame game, string place)
    {
        var others = plan.DayOf(person, game.Day).Where(g => g.Seated?.Game.Key != game.Key).ToList();
        var before = others.Where(g => g.Start < game.Start).ToList();
        var later = others.Where(g => g.Start >= game.Start).ToList();
        var plates = place == CrewPlace.Plate ? $" and {Ordinal(before.Count(g => g.IsPlate) + 1)} plate" : "";
        var gap = before.Count == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {(game.Start - before.Max(g => g.End)).TotalMinutes:0} min after the last");
        return $"{Ordinal(before.Count + 1)} game{plates} of the day{gap}; {(later.Count == 0 ? "nothing later that day" : $"later that day: {string.Join(", ", later.Select(l => l.InWords))}")}";
    }

    public static string StandingWord(Standby standing) => standing switch { Standby.Legal => "may", Standby.Moved => "may, if moved", Standby.Backup => "stands by", _ => "not" };

    /// <summary>One line for a substitute: when there, what it would break or open, what comes later that day.</summary>
    public static string Sub(Substitute sub)
    {
        var parts = new List<string>();
        if (sub.Arrives is { } at) parts.Add($"there at {Clock(at)}");
        if (sub.Minutes is { } minutes) parts.Add($"{minutes} min");
        if (sub.Reasons.Count > 0) parts.Add($"{(sub.Standing == Standby.Backup ? "breaks " : "")}{string.Join("; ", sub.Reasons.Select(r => r.Named))}");
        if (sub.Opens.Count > 0) parts.Add($"opens {string.Join(", ", sub.Opens.Select(o => $"{o.Place} of {o.Game.Key} at {Clock(o.Game.Start)}"))}");
        if (sub.Wishes.Count > 0) parts.Add(string.Join("; ", sub.Wishes.Select(w => w.Said)));
        if (sub.Later.Count > 0) parts.Add($"later: {string.Join(", ", sub.Later.Select(l => l.InWords))}");
        return $"{sub.Person.Name} {StandingWord(sub.Standing)}{(parts.Count == 0 ? "" : ", ")}{string.Join(", ", parts)}";
    }

    /// <summary>A call-up: who goes where, how the game begins, who stands by, why the others not.</summary>
    public static IReadOnlyList<string> Call(CallUp call)
    {
        var lines = call.Called.Select(c => $"call {c.Who.Person.Name} for the {c.Place}{(c.Who.Arrives is { } at ? $", there at {Clock(at)}" : "")}").ToList();
        lines.AddRange(call.StillOpen.Select(p => $"nobody for the {p}"));
        if (call.StartsLate is { } late) lines.Add($"the game can begin at {Clock(late)}");
        if (call.OneUmpireUntil is { } until) lines.Add($"one umpire alone until {Clock(until)}");
        lines.AddRange(call.Backups.Select(b => $"stand-by: {Sub(b)}"));
        lines.AddRange(call.Rejected.Select(Sub));
        return lines;
    }

    /// <summary>The week's supply against its demand.</summary>
    public static IReadOnlyList<string> Forecast(Forecast forecast)
    {
        var lines = new List<string> { string.Create(CultureInfo.InvariantCulture, $"week of {forecast.Monday:yyyy-MM-dd}: {forecast.Required} places required, {forecast.Offered:0.#} games offered; at most {forecast.Filled} can be filled, {forecast.Short} stay open") };
        lines.AddRange(forecast.Nights.Where(n => n.Games > 0).Select(n => string.Create(CultureInfo.InvariantCulture,
            $"{n.Day:ddd d MMM}: {n.Games} games, {n.Required} places, {n.Supply} can be filled that night alone; plates {n.Plates}, {n.PlateSupply} can be filled; free {string.Join(", ", n.ByGrade.Select(g => $"{g.Value} {GradeWord(g.Key)}"))}")));
        lines.AddRange(forecast.Moves.Take(5).Select(m => string.Create(CultureInfo.InvariantCulture, $"a two-umpire game moved from {m.From:ddd d MMM} to {m.To:ddd d MMM} fills {m.Gains} more")));
        lines.AddRange(forecast.Leagues.Where(l => l.TwoGameVolunteers > 0).Select(l => string.Create(CultureInfo.InvariantCulture, $"{l.League.Name}: {l.Required} places at home, {l.Offered:0.#} offered; short of {l.TwoGameVolunteers} volunteers for two games a week")));
        return lines;
    }

    private static string GradeWord(People.Grade grade) => grade == People.Grade.CrewChief ? "crew chief" : grade.ToString().ToLowerInvariant();
}
