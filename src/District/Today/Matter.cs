namespace Umpirage.District.Today;

/// <summary>What kind of matter waits, the gravest first: a safety matter stands above all others that are due on the same day.</summary>
public enum MatterKind { Safety, OpenPlace, Swap, CountsDiffer, Lapsed, Expiring, Question, Proposal, Rainout }

/// <summary>
/// Something that needs a decision. <paramref name="Due"/> is the district's clock: the moment after which it is too late.
/// <paramref name="About"/> is the key of the record it is about.
/// </summary>
public sealed record Matter(MatterKind Kind, DateTime Due, string What, string Why, string About);
