namespace Umpirage.Rules.Ground;

/// <summary>What kind of fault a finding reports. The order is the order of checking.</summary>
public enum FindingKind
{
    UnreadableLine, UnknownWord, MissingQuestion, MissingCitation, BlankCell, ForbiddenChange, ImpossibleValue,
    Cycle, Gap, Conflict, DeadRule, IdleException, Unused, TooEntangled, ImpossiblePlay,
}

/// <summary>
/// One fault in something a person wrote: where it stands, what was found and what was allowed. Faults are collected, never thrown.
/// <paramref name="Line"/> counts from 1; 0 means the whole file.
/// </summary>
public sealed record Finding(FindingKind Kind, string File, int Line, string Message)
{
    public override string ToString() => Line > 0 ? $"{File}, line {Line}: {Message}" : $"{File}: {Message}";
}
