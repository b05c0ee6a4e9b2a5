using Umpirage.District.Crews;

namespace Umpirage.Solve.Crews;

/// <summary>One priority: what was counted, how much is left of it, the least that any plan could have, and whether that is proven.</summary>
/// <param name="Bound">No plan that keeps the priorities before it has less. Equal to the value when it is proven best.</param>
public sealed record Stage(string Priority, long Value, long Bound, double Seconds)
{
    public long Gap => Value - Bound;
    public bool Proven => Gap <= 0;
    public string InWords => $"{Priority}: {Value}{(Proven ? ", proven the least" : $", at least {Bound}, gap {Gap}")}";
}

/// <summary>A place that stays open, and what keeps everybody from it: how many are kept by which constraint, the first that applies to each.</summary>
/// <param name="ForOneMore">Who could take it for one game more than offered.</param>
public sealed record OpenPlace(CrewGame Game, string Place, IReadOnlyList<(string Constraint, int People)> KeptBy, IReadOnlyList<CrewPerson> ForOneMore)
{
    public string InWords => $"{Place} of {Game.Key}: {string.Join(", ", KeptBy.Select(k => $"{k.People} {k.Constraint}"))}{(ForOneMore.Count > 0 ? $"; {ForOneMore.Count} could for one more than offered" : "")}";
}

/// <summary>A place that changes hands.</summary>
public sealed record CrewChange(CrewGame Game, string Place, CrewPerson? From, CrewPerson? To);

/// <summary>A plan as found, with the proof of how good it is, or the plan as it was when nothing was found in time.</summary>
/// <param name="Recounted">What the check finds in the plan's games, wishes too. Never a breach of safety or of a rule.</param>
/// <param name="Stopped">The search was stopped or ran out of time before the last priority; the plan is the last good one.</param>
public sealed record CrewResult(
    CrewPlan Plan, IReadOnlyList<Stage> Stages, IReadOnlyList<CrewChange> Changes, IReadOnlyList<OpenPlace> Open, IReadOnlyList<Breach> Recounted, bool Stopped, double Seconds)
{
    public IEnumerable<OpenPlace> Required => Open.Where(o => CrewPlace.IsRequired(o.Place));

    /// <summary>Games whose bases stay open while the plate is filled.</summary>
    public IEnumerable<CrewGame> OneUmpire => Open.Where(o => CrewPlace.IsRequired(o.Place) && o.Place != CrewPlace.Plate).Select(o => o.Game).DistinctBy(g => g.Key).Where(g => Open.All(o => o.Game.Key != g.Key || o.Place != CrewPlace.Plate));
    public IEnumerable<CrewGame> NoUmpire => Open.Where(o => o.Place == CrewPlace.Plate).Select(o => o.Game).DistinctBy(g => g.Key);
}
