using System.Data;
using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Store;

/// <summary>Swaps between umpires: asked, answered by both sides, confirmed by the assigner. Each step looks anew whether it may be; nothing is half done.</summary>
public static class Swapping
{
    /// <summary>Keeps a swap as asked, or tells everything that bars it.</summary>
    /// <param name="asks">Who asks: the umpire whose place it is, or a minor's guardian.</param>
    /// <param name="now">The district's clock.</param>
    public static (AskedSwap? Swap, SwapCheck Check, IReadOnlyList<FieldFault> Faults) Ask(DistrictStore store, AskedSwap swap, Viewer asks, DateTime now)
    {
        var faults = new List<FieldFault>();
        // who does not set crews asks about places that were published, and hears of no others
        var check = SwapCheck.Of(Plan(store, CrewSight.Of(asks, now)), swap, now);
        if (check.Stale.Count == 0) check = SwapCheck.Of(Plan(store, CrewSight.All), swap, now);
        var person = store.People.Find(swap.Person);
        if (person is null || !(asks.Person?.Key == swap.Person || asks.AnswersFor(person))) faults.Add(new("person", swap.Person, "yourself, or a child you answer for"));
        if (store.Swaps.AsNoTracking().Where(s => s.Game == swap.Game && s.Place == swap.Place).AsEnumerable().Any(s => s.IsOpen && (s.Game, s.Place, s.Other, s.OtherGame, s.OtherPlace) == (swap.Game, swap.Place, swap.Other, swap.OtherGame, swap.OtherPlace))) faults.Add(new("swap", "asked already", "one that does not wait for an answer yet"));
        if (faults.Count > 0 || !check.May) return (null, check, faults);
        // an adult who asks has said yes; a minor's guardian still has to
        var kept = swap with { Key = $"swap-{Guid.NewGuid():N}"[..13], At = DateTime.UtcNow, State = SwapState.Asked, Yes = asks.AnswersFor(person!) ? asks.Person!.Key : null, OtherYes = null, DecidedBy = null };
        store.Add(kept);
        store.SaveChanges();
        return (kept, check, faults);
    }

    /// <summary>Says yes or no for one side, or for both where the same person answers for both.</summary>
    public static IReadOnlyList<FieldFault> Answer(DistrictStore store, string key, bool yes, Viewer answers, DateTime now) => Whole(store, faults =>
    {
        if (Open(store, key, faults) is not { } swap) return;
        var (own, other) = (answers.AnswersFor(store.People.Find(swap.Person)!), answers.AnswersFor(store.People.Find(swap.Other)!));
        if (!own && !other) { faults.Add(new("answer", answers.Person?.ListName ?? "nobody", "one of the two umpires; for a minor a guardian")); return; }
        if (!yes) { store.Put(swap with { State = SwapState.Declined, DecidedBy = answers.Person!.Key }); return; }
        var check = SwapCheck.Of(Plan(store, CrewSight.All), swap, now);
        if (!check.May) { faults.AddRange(Told(check, answers)); return; }
        store.Put(swap with { Yes = own ? answers.Person!.Key : swap.Yes, OtherYes = other ? answers.Person!.Key : swap.OtherYes });
    });

    /// <summary>Takes a swap back that one asked for.</summary>
    public static IReadOnlyList<FieldFault> TakeBack(DistrictStore store, string key, Viewer asked) => Whole(store, faults =>
    {
        if (Open(store, key, faults) is not { } swap) return;
        if (asked.Person?.Key != swap.Person && !asked.AnswersFor(store.People.Find(swap.Person)!)) faults.Add(new("swap", key, "one that you asked for"));
        else store.Put(swap with { State = SwapState.TakenBack, DecidedBy = asked.Person!.Key });
    });

    /// <summary>The assigner's word. With a yes both places change hands, if nothing bars it at this moment.</summary>
    public static IReadOnlyList<FieldFault> Decide(DistrictStore store, string key, bool yes, Viewer assigner, DateTime now) => Whole(store, faults =>
    {
        if (Open(store, key, faults) is not { } swap) return;
        if (!yes) { store.Put(swap with { State = SwapState.Refused, DecidedBy = assigner.Person!.Key }); return; }
        if (!swap.IsAgreed) { faults.Add(new("swap", key, "one to which both sides said yes")); return; }
        var check = SwapCheck.Of(Plan(store, CrewSight.All), swap, now);
        if (!check.May) { faults.AddRange(Told(check, null)); return; }
        List<Assignment> changed = [new(swap.Game, swap.Place, swap.Other)];
        if (swap.OtherGame is { } game && swap.OtherPlace is { } place) changed.Add(new(game, place, swap.Person));
        changed.ForEach(store.Put);
        Publishing.Tell(store, changed);
        store.Put(swap with { State = SwapState.Confirmed, DecidedBy = assigner.Person!.Key });
    });

    /// <summary>Everything that bars a swap, as the reader may know it.</summary>
    /// <param name="reader">Nobody: the assigner, who reads all.</param>
    public static IEnumerable<FieldFault> Told(SwapCheck check, Viewer? reader) =>
    [
        .. check.Stale.Select(s => new FieldFault("swap", s, "a swap of places that both still have")),
        .. check.Reasons.Select(r => reader is null ? $"{r.Place} of {r.Game}, {r.Constraint}: {r.InWords}" : CrewWords.OwnReason(r, [reader.Person!.Key, .. reader.Children])).Distinct().Select(r => new FieldFault("swap", r, "a swap that breaks no rule")),
    ];

    private static AskedSwap? Open(DistrictStore store, string key, List<FieldFault> faults)
    {
        if (store.Swaps.Find(key) is not { } swap) faults.Add(new("swap", key, "one on record"));
        else if (!swap.IsOpen) faults.Add(new("swap", $"{key}, {StateWord(swap.State)}", "one that is still open"));
        else return swap;
        return null;
    }

    public static string StateWord(SwapState state) => state switch { SwapState.Asked => "asked", SwapState.Declined => "declined", SwapState.TakenBack => "taken back", SwapState.Refused => "refused", _ => "confirmed" };

    private static CrewPlan Plan(DistrictStore store, CrewSight sight) => CrewPlan.Of(sight.Of(CrewReader.Read(store)), UmpiresCodes.For(store.Codes!()));

    private static List<FieldFault> Whole(DistrictStore store, Action<List<FieldFault>> deed)
    {
        var faults = new List<FieldFault>();
        try
        {
            // the lock is taken before the look, so that nobody writes between the look and the deed
            using var transaction = store.Database.BeginTransaction(IsolationLevel.Serializable);
            deed(faults);
            if (faults.Count == 0)
            {
                store.SaveChanges();
                transaction.Commit();
            }
        }
        catch (UnsafeCrewException unsafeCrew) { faults.Add(new("swap", unsafeCrew.Message, "a crew that keeps every safety rule")); }
        catch (Exception fault) when (fault is DbUpdateException or DbException or InvalidOperationException { InnerException: DbUpdateException or DbException })
        {
            faults.Add(new("swap", (fault.InnerException ?? fault).Message, "nobody else writing at the same moment; try again"));
        }
        if (faults.Count > 0) store.ChangeTracker.Clear();
        return faults;
    }
}
