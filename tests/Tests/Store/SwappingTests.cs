using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

/// <summary>A swap goes through three hands; nothing changes before the last, and each looks anew.</summary>
public class SwappingTests
{
    private static readonly DateTime Morning = Crews.Town.At(7), Told = new(2026, 5, 10, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Ann at the plate and Ben on the bases in the morning; Dan, 14, on the youth base at noon with Eve as coordinator; Gil answers for Dan and Cora.</summary>
    private static OwnStore Town(Kept kept)
    {
        var own = OwnStore.Empty(kept);
        using var store = own.Open();
        var t = Crews.Town.Empty;
        Seed.Put(store,
        [
            .. t.Leagues, .. t.Divisions, .. t.Parks, .. t.Diamonds, .. t.Teams, .. t.People, .. t.Roles, .. t.Officials, .. t.Clearances, .. t.Certificates, .. t.Hours, .. t.Guardianships, .. t.Approvals,
            Crews.Town.Game("m", Crews.Town.At(9), "BB 11-12"), Crews.Town.Game("n", Crews.Town.At(12)), new Coordination("n", "eve"),
            new Assignment("m", "plate", "ann"), new Assignment("m", "base", "ben"), new Assignment("n", "youth base", "dan"), new Assignment("n", "plate", "ben"),
        ]);
        Seed.Put(store, Published.Of([]).Against(CrewReader.Read(store), store.Games, Told).Select(c => c.Now));
        return own;
    }

    private static DistrictStore Open(OwnStore own)
    {
        var store = own.Open();
        store.Codes = () => Shelf.Codes;
        store.Today = Crews.Town.Saturday;
        return store;
    }

    private static Viewer As(DistrictStore store, string key) => new(store.People.Find(key), [.. store.Roles.Where(r => r.Person == key)], [.. store.Guardianships.Where(g => g.Guardian == key).Select(g => g.Child)]);

    private static AskedSwap Asked(string person, string game, string place, string other, string? otherGame = null, string? otherPlace = null) => new("", person, game, place, other, otherGame, otherPlace, default, SwapState.Asked);

    private static string Ask(DistrictStore store, AskedSwap swap, string by)
    {
        var (kept, check, faults) = Swapping.Ask(store, swap, As(store, by), Morning);
        Assert.True(kept is not null, string.Join("; ", [.. faults.Select(f => f.ToString()), .. check.Stale, .. check.Reasons.Select(r => r.InWords)]));
        return kept.Key;
    }

    private static string? Sits(OwnStore own, string game, string place)
    {
        using var store = own.Open();
        return store.Assignments.Find(game, place)!.Person;
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Two_umpires_exchange_and_the_assigner_confirms(Kept kept)
    {
        using var own = Town(kept);
        string key;
        using (var store = Open(own)) key = Ask(store, Asked("ann", "m", "plate", "ben", "m", "base"), "ann");
        using (var store = Open(own)) Assert.Contains("one to which both sides said yes", Swapping.Decide(store, key, true, As(store, "eve"), Morning).Single().ToString());
        using (var store = Open(own)) Assert.Contains("one of the two umpires", Swapping.Answer(store, key, true, As(store, "eve"), Morning).Single().ToString());
        // asking twice is told, and who asked cannot say yes for the other
        using (var store = Open(own)) Assert.Contains("asked already", Swapping.Ask(store, Asked("ann", "m", "plate", "ben", "m", "base"), As(store, "ann"), Morning).Faults.Single().ToString());
        using (var store = Open(own)) { Assert.Empty(Swapping.Answer(store, key, true, As(store, "ann"), Morning)); Assert.False(store.Swaps.Find(key)!.IsAgreed); }
        using (var store = Open(own)) { Assert.Empty(Swapping.Answer(store, key, true, As(store, "ben"), Morning)); Assert.True(store.Swaps.Find(key)!.IsAgreed); }
        Assert.Equal("ann", Sits(own, "m", "plate"));
        using (var store = Open(own)) Assert.Empty(Swapping.Decide(store, key, true, As(store, "eve"), Morning));
        Assert.Equal(("ben", "ann"), (Sits(own, "m", "plate"), Sits(own, "m", "base")));
        // both know it, so it counts as told: their pages and calendars have it at once
        using (var store = Open(own)) Assert.Equal(("ben", "ann"), (Published.Of(store.Published).Find("m", "plate")!.Person, Published.Of(store.Published).Find("m", "base")!.Person));
        using (var store = Open(own)) Assert.Contains("confirmed", Swapping.TakeBack(store, key, As(store, "ann")).Single().ToString());
        using (var store = Open(own)) Assert.Contains(store.Trail.AsEnumerable(), t => t is { What: "AskedSwap", Deed: "changed" } && t.After!.Contains("Confirmed", StringComparison.Ordinal));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void What_changed_in_between_bars_it_at_the_last_moment(Kept kept)
    {
        using var own = Town(kept);
        string key;
        using (var store = Open(own)) key = Ask(store, Asked("ann", "m", "plate", "ben", "m", "base"), "ann");
        using (var store = Open(own)) Assert.Empty(Swapping.Answer(store, key, true, As(store, "ben"), Morning));
        using (var store = Open(own)) { store.Put(new Assignment("m", "base", null)); store.SaveChanges(); }
        using (var store = Open(own)) Assert.Contains("Ben Lark does not have the bases", Swapping.Decide(store, key, true, As(store, "eve"), Morning).Single().ToString());
        // written by somebody who holds nothing against the codes, as an older version might have
        using (var store = own.Open()) { store.Put(new Assignment("m", "base", "ben")); store.Put(store.Clearances.Single(c => c.Person == "ben" && c.Requirement == "background check") with { Until = new(2026, 5, 15) }); store.SaveChanges(); }
        // the check ran out, but it barred the game before the swap, too: what it newly bars is the place he would get
        using (var store = Open(own)) Assert.Contains(Swapping.Decide(store, key, true, As(store, "eve"), Morning), f => f.ToString().Contains("plate of m, clearance", StringComparison.Ordinal));
        Assert.Equal(("ann", "ben"), (Sits(own, "m", "plate"), Sits(own, "m", "base")));
        using (var store = Open(own)) Assert.Contains("began at 9:00", Swapping.Decide(store, key, true, As(store, "eve"), Crews.Town.At(9, 1)).First().ToString());
        using (var store = Open(own)) Assert.True(store.Swaps.Find(key)!.IsOpen);
        using (var store = Open(own)) { Assert.Empty(Swapping.Decide(store, key, false, As(store, "eve"), Morning)); Assert.Equal(SwapState.Refused, store.Swaps.Find(key)!.State); }
    }

    /// <summary>Who asks about a place that is a draft hears the same as of one that nobody has.</summary>
    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_place_that_was_not_published_is_no_place_to_swap(Kept kept)
    {
        using var own = Town(kept);
        using (var store = own.Open())
        {
            store.AddRange(Crews.Town.Game("d", Crews.Town.At(15), "BB 11-12"), new Assignment("d", "plate", "ann"));
            store.SaveChanges();
        }
        using (var store = Open(own))
        {
            var (none, check, _) = Swapping.Ask(store, Asked("ann", "d", "plate", "ben"), As(store, "ann"), Morning);
            Assert.Null(none);
            Assert.EndsWith("it is open", Assert.Single(check.Stale));
        }
        using (var store = Open(own))
        {
            store.AddRange(Published.Of([]).Against(CrewReader.Read(store), store.Games.Where(g => g.Key == "d"), Told).Select(c => c.Now));
            store.SaveChanges();
        }
        using (var store = Open(own)) Assert.NotNull(Swapping.Ask(store, Asked("ann", "d", "plate", "ben"), As(store, "ann"), Morning).Swap);
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_minors_yes_is_the_guardians(Kept kept)
    {
        using var own = Town(kept);
        string key;
        // Dan asks for himself: that is no yes; Cora, 16, cannot answer for herself either
        using (var store = Open(own)) key = Ask(store, Asked("dan", "n", "youth base", "cora"), "dan");
        using (var store = Open(own)) Assert.Null(store.Swaps.Find(key)!.Yes);
        foreach (var child in (string[])["dan", "cora"]) using (var store = Open(own)) Assert.Contains("for a minor a guardian", Swapping.Answer(store, key, true, As(store, child), Morning).Single().ToString());
        // the parent of both answers for both
        using (var store = Open(own)) Assert.Empty(Swapping.Answer(store, key, true, As(store, "gil"), Morning));
        using (var store = Open(own)) Assert.Empty(Swapping.Decide(store, key, true, As(store, "ann"), Morning));
        Assert.Equal("cora", Sits(own, "n", "youth base"));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void What_a_rule_bars_is_never_asked_and_nobody_offers_anothers_place(Kept kept)
    {
        using var own = Town(kept);
        using var store = Open(own);
        // a minor in a game without a coordinator
        var (none, check, _) = Swapping.Ask(store, Asked("ann", "m", "plate", "dan"), As(store, "ann"), Morning);
        Assert.Null(none);
        Assert.Contains("adult coordinator", check.Reasons.Select(r => r.Constraint));
        // Ann learns that it is barred for somebody else, and not why
        Assert.All(Swapping.Told(check, As(store, "ann")), f => Assert.Contains("the assigner knows what", f.ToString()));
        Assert.Contains("yourself, or a child you answer for", Swapping.Ask(store, Asked("ben", "m", "base", "ann", "m", "plate"), As(store, "ann"), Morning).Faults.Single().ToString());
        Assert.Contains("one on record", Swapping.Answer(store, "swap-none", true, As(store, "ann"), Morning).Single().ToString());
        Assert.Empty(store.Swaps);
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_no_of_either_side_ends_it(Kept kept)
    {
        using var own = Town(kept);
        string key;
        using (var store = Open(own)) key = Ask(store, Asked("ann", "m", "plate", "ben", "m", "base"), "ann");
        using (var store = Open(own)) Assert.Empty(Swapping.Answer(store, key, false, As(store, "ben"), Morning));
        using (var store = Open(own)) Assert.Equal((SwapState.Declined, "ben"), (store.Swaps.Find(key)!.State, store.Swaps.Find(key)!.DecidedBy));
        using (var store = Open(own)) key = Ask(store, Asked("ann", "m", "plate", "ben", "m", "base"), "ann");
        using (var store = Open(own)) Assert.Contains("one that you asked for", Swapping.TakeBack(store, key, As(store, "ben")).Single().ToString());
        using (var store = Open(own)) { Assert.Empty(Swapping.TakeBack(store, key, As(store, "ann"))); Assert.Equal(SwapState.TakenBack, store.Swaps.Find(key)!.State); }
    }
}
