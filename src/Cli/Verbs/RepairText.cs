using System.Globalization;
using System.Text;
using Umpirage.District.Calendar;
using Umpirage.Rules.Ground;

namespace Umpirage.Cli.Verbs;

/// <summary>A plan of moved games as text and for programs: from and to, messages, fees, crews.</summary>
internal static class RepairText
{
    public static string Of(Replanning asked, Replan plan, Aftermath after, IReadOnlyDictionary<string, string> names, string key)
    {
        var text = new StringBuilder();
        var district = asked.Schedule.Surroundings;
        string Game(ScheduledGame g) => $"{g.Key} ({g.Division}, {district.Teams[g.Visitor].Name} at {district.Teams[g.Home].Name})";
        string Place(ScheduledGame g) => $"{Day(g.Start)} on {district.Diamonds[g.Diamond].Name}";
        string Name(string person) => names.GetValueOrDefault(person, person);

        text.AppendLine(CultureInfo.InvariantCulture, $"MOVED: {plan.Moves.Count} games, at least {plan.AtLeast} have to; {(plan.Proven ? "proven the best" : $"time ran out: {plan.Gap} more than shown to be needed")}{(plan.LookedAt > 0 ? $", among {plan.LookedAt} games that might make room" : "")}; {plan.Moves.Sum(m => m.DaysLater)} days late together; {plan.Rounds} {(plan.Rounds == 1 ? "round" : "rounds")}, {plan.Took.TotalSeconds:0.0} s");
        foreach (var move in plan.Moves)
            text.AppendLine($"  {Game(move.From)}: {move.Reason}\n      from {Place(move.From)}\n      to   {Place(move.To)}");
        if (plan.Without.Count > 0)
        {
            text.AppendLine($"\nWITHOUT A PLACE: {plan.Without.Count} games");
            foreach (var none in plan.Without)
                text.AppendLine($"  {Game(none.Game)}: {none.Slots} slots from {CodeAddress.Day(none.From)} to {CodeAddress.Day(none.Until)}{string.Concat(none.Why.Select(w => $"; {w.Slots} against '{w.Constraint}'"))}{(none.Slots == 0 ? ": none on a diamond of its size" : none.Why.Sum(w => w.Slots) < none.Slots ? "; the rest went to other games" : "")}");
        }
        foreach (var wish in plan.Wishes) text.AppendLine($"{(wish == plan.Wishes[0] ? "\nWISHES NOT MET\n" : "")}  {wish.Found}; wished is {wish.Allowed}");
        text.AppendLine("\nTO BE TOLD (a minor's guardian, never the minor alone)");
        foreach (var notice in after.Notices)
            text.AppendLine($"  {notice.Game}, by {Day(notice.By)}{(notice.InTime ? "" : ": already late")}: {Words.And([.. notice.Tell.Select(Name)])}{(notice.NobodyFor.Count > 0 ? $"; nobody on record for {Words.And([.. notice.NobodyFor.Select(Name)])}" : "")}");
        text.AppendLine(after.Fees.Count == 0 ? "\nNobody is owed a fee for this: told in time." : "\nOWED");
        foreach (var fee in after.Fees) text.AppendLine($"  {fee.Game}, {fee.Place}, {Name(fee.Person)}: {fee.Share} ({fee.Source})");
        if (after.ToAsk.Count > 0) text.AppendLine("\nCREWS TO BE ASKED AGAIN");
        foreach (var ask in after.ToAsk) text.AppendLine($"  {ask.Game}, {ask.Place}, {Name(ask.Person)}{(ask.FreeThen ? "" : ": not within the weekly hours on record, the place will be open")}");
        text.AppendLine(key == "" ? "\nNothing is written yet; --save keeps the plan." : $"\nKept as plan {key}; ./umpirage schedule undo {key} takes it back.");
        return text.ToString();
    }

    private static string Day(DateTime at) => at.ToString("ddd d MMM HH:mm", CultureInfo.InvariantCulture);

    public static object Json(Replan plan, Aftermath after, string key) => new
    {
        plan = key == "" ? null : key, moved = plan.Moves.Count, atLeast = plan.AtLeast, proven = plan.Proven, gap = plan.Gap, seconds = Math.Round(plan.Took.TotalSeconds, 2),
        moves = plan.Moves.Select(m => new
        {
            game = m.From.Key, reason = m.Reason, rainedOut = m.RainedOut, from = new { diamond = m.From.Diamond, start = ScheduleText.Moment(m.From.Start) }, to = new { diamond = m.To.Diamond, start = ScheduleText.Moment(m.To.Start) },
        }),
        without = plan.Without.Select(w => new { game = w.Game.Key, from = CodeAddress.Day(w.From), until = CodeAddress.Day(w.Until), slots = w.Slots, why = w.Why.Select(y => new { constraint = y.Constraint, slots = y.Slots }) }),
        wishes = ScheduleText.Json(plan.Wishes), notices = after.Notices.Select(n => new { game = n.Game, tell = n.Tell, nobodyFor = n.NobodyFor, by = ScheduleText.Moment(n.By), inTime = n.InTime }),
        owed = after.Fees.Select(f => new { game = f.Game, place = f.Place, person = f.Person, share = f.Share, source = f.Source }), askAgain = after.ToAsk.Select(a => new { game = a.Game, place = a.Place, person = a.Person, freeThen = a.FreeThen }),
    };
}
