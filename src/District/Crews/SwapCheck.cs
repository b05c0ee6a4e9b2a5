using System.Globalization;
using Umpirage.District.Calendar;

namespace Umpirage.District.Crews;

/// <summary>What an asked swap would do, as things stand at a moment.</summary>
/// <param name="Stale">Why it cannot be done any more, or never could: a game that began, a place that somebody else has.</param>
/// <param name="Reasons">What it would newly break, safety and rules, at either game and for either umpire.</param>
/// <param name="Wishes">What it would break besides, without being a no.</param>
public sealed record SwapCheck(IReadOnlyList<string> Stale, IReadOnlyList<Breach> Reasons, IReadOnlyList<Breach> Wishes)
{
    public bool May => Stale.Count == 0 && Reasons.Count == 0;

    public static SwapCheck Of(CrewPlan plan, AskedSwap swap, DateTime now)
    {
        var stale = new List<string>();
        var given = Held(plan, swap.Person, swap.Game, swap.Place, now, stale);
        var returned = swap.OtherGame is { } game && swap.OtherPlace is { } place ? Held(plan, swap.Other, game, place, now, stale) : null;
        if ((swap.OtherGame is null) != (swap.OtherPlace is null)) stale.Add("a swap names both the game and the place that come back, or neither");
        if (plan.Person(swap.Other) is not { Official: not null } other) { stale.Add($"'{swap.Other}' is no umpire on record"); return new(stale, [], []); }
        if (swap.Other == swap.Person) stale.Add("nobody swaps with themselves");
        if (stale.Count > 0 || given is null) return new(stale, [], []);

        var after = plan.With(given.Game, given.Place, other);
        if (returned is not null) after = after.With(returned.Game, returned.Place, given.Person);
        var (reasons, wishes) = CrewCheck.Newly(plan, after, [given.Person, other], returned is null ? [given.Game] : [given.Game, returned.Game]);
        return new(stale, reasons, wishes);
    }

    private static Seated? Held(CrewPlan plan, string person, string game, string place, DateTime now, List<string> stale)
    {
        if (plan.Game(game) is not { Game.IsAhead: true } known) { stale.Add($"the game {game} is not to be played"); return null; }
        if (known.Start <= now) { stale.Add(string.Create(CultureInfo.InvariantCulture, $"{CrewWords.Game(known)} began at {known.Start:H:mm}")); return null; }
        var seat = plan.CrewOf(known).FirstOrDefault(s => s.Place == place);
        if (seat?.Person.Key == person) return seat;
        stale.Add($"{plan.Person(person)?.Name ?? person} does not have {CrewWords.PlaceWord(place)} of {CrewWords.Game(known)}{(seat is null ? "; it is open" : "; somebody else has it")}");
        return null;
    }
}
