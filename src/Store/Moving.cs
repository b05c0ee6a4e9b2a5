using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;

namespace Umpirage.Store;

/// <summary>Writes a plan of moved games, and takes it back: all of it or nothing. What happened is only ever added to.</summary>
public static class Moving
{
    /// <summary>Keeps a plan and what is closed for it. Returns the plan's key, or the reasons why nothing was written.</summary>
    public static (string Plan, IReadOnlyList<string> Faults) Keep(DistrictStore store, Replan plan, IReadOnlyList<Blackout> closed) => Whole.Of(store, faults =>
    {
        var key = NextKey(store);
        foreach (var move in plan.Moves) Put(store, key, move.From, move.To, null, faults);
        foreach (var none in plan.Without.Where(w => w.Game.Status != GameStatus.RainedOut)) Put(store, key, none.Game, none.Game with { Status = GameStatus.RainedOut }, null, faults);
        foreach (var one in closed)
            if (store.Blackouts.Find(one.Kind, one.Of, one.From) is null) store.Add(one with { Reason = $"{one.Reason}{Mark(key)}" });
        return key;
    });

    /// <summary>Puts every game of a plan back where it was. Returns the key of the plan that does so, or the reasons why nothing was written: an unknown plan, a game that somebody changed since.</summary>
    public static (string Plan, IReadOnlyList<string> Faults) TakeBack(DistrictStore store, string plan) => Whole.Of(store, faults =>
    {
        var moves = store.Moves.AsNoTracking().Where(m => m.Plan == plan).OrderBy(m => m.Game).ToList();
        if (moves.Count == 0)
        {
            List<string> known = [.. store.Moves.Select(m => m.Plan).Distinct().OrderBy(p => p)];
            faults.Add($"there is no plan '{plan}'; {Rules.Ground.Words.Offer(plan, known)}");
        }
        if (store.Moves.Where(m => m.TakesBack == plan).Select(m => m.Plan).Distinct().OrderBy(p => p).LastOrDefault() is { } back && !moves.All(m => Stands(store.Games.Find(m.Game), m)))
        {
            faults.Add($"the plan '{plan}' was taken back already, by '{back}'");
            return "";
        }
        var key = NextKey(store);
        foreach (var move in moves)
        {
            var now = store.Games.Find(move.Game)!;
            if (!Stands(now, move)) faults.Add($"{move.Game} was changed since: it is {Place(now.Diamond, now.Start, now.Status)}, and the plan left it {Place(move.ToDiamond, move.ToStart, move.ToStatus)}");
            else Put(store, key, now, now with { Diamond = move.FromDiamond, Start = move.FromStart, Status = move.FromStatus }, plan, faults);
        }
        store.RemoveRange(store.Blackouts.AsEnumerable().Where(b => b.Reason.EndsWith(Mark(plan), StringComparison.Ordinal)));
        return key;
    });

    private static void Put(DistrictStore store, string plan, ScheduledGame from, ScheduledGame to, string? takesBack, List<string> faults)
    {
        var now = store.Games.Find(from.Key);
        if (now != from) { faults.Add($"{from.Key} was changed since: {(now is null ? "it is gone" : $"it is {Place(now.Diamond, now.Start, now.Status)}")}; make the plan anew"); return; }
        store.Add(new GameMove(plan, from.Key, from.Diamond, from.Start, from.Status, to.Diamond, to.Start, to.Status, WholeSecond.Now, store.Actor, takesBack));
        // changes 'from' too where that is the record on hand
        store.Entry(now).CurrentValues.SetValues(to with { Sequence = now.Sequence + 1 });
    }

    private static bool Stands(ScheduledGame? game, GameMove move) => game is not null && (game.Diamond, game.Start, game.Status) == (move.ToDiamond, move.ToStart, move.ToStatus);

    private static string NextKey(DistrictStore store)
    {
        var day = Files.Written.Day(store.Today);
        var known = store.Moves.Select(m => m.Plan).Distinct().AsEnumerable().Where(p => p.StartsWith(day + "-", StringComparison.Ordinal)).Select(p => int.TryParse(p[(day.Length + 1)..], out var n) ? n : 0);
        return $"{day}-{known.DefaultIfEmpty(0).Max() + 1}";
    }

    private static string Mark(string plan) => $" (plan {plan})";

    private static string Place(string diamond, DateTime start, GameStatus status) =>
        $"{Files.GameFile.StatusWord(status)} at {start.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} on {diamond}";
}
