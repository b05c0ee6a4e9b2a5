using Umpirage.Rules.Ground;

namespace Umpirage.District.Gear;

/// <summary>Why a piece may not come into the game: what was seen, the rule, and its source.</summary>
public sealed record GearReason(string Seen, string Title, string Rule, string Sheet, Citation Source)
{
    public string InWords => $"{Seen}: {Title} ({Sheet} {Rule}; {Source})";
}

/// <summary>What a fault costs by when it is found, in the sheet's words.</summary>
public sealed record GearCost(string Found, IReadOnlyList<string> Decisions)
{
    public string InWords => $"found {Found}: {string.Join("; ", Decisions)}";
}

/// <summary>The line of the log for a piece that was taken out. Who keeps it and when it goes back is written by hand.</summary>
public sealed record Removal(string Day, string Code, string Game, string Item, string Why, string Rules)
{
    public string InWords => $"{Day} | {Code} | {(Game == "" ? "-" : Game)} | {Item} | {Why} | {Rules} | kept by ________ | given back ________";
}

/// <summary>
/// What comes of looking a piece over: whether it conforms to the code, in what respects not, what to do, and what it costs. It conforms or it does not;
/// nothing here says that it cannot hurt.
/// </summary>
public sealed record Looked(GearItem Item, bool Conforms, string? Mark, IReadOnlyList<GearReason> Reasons, IReadOnlyList<string> Do, IReadOnlyList<GearCost> Costs, IReadOnlyList<string> Rulings, Removal? Removal);
