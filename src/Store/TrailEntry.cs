namespace Umpirage.Store;

/// <summary>
/// One write: who did it, when (UTC), to which record, and the record before and after as JSON. The table refuses changes and deletions.
/// Secrets of accounts are left out.
/// </summary>
public sealed class TrailEntry
{
    public long Number { get; init; }
    public required DateTime At { get; init; }
    public required string By { get; init; }
    public required string What { get; init; }
    public required string Key { get; init; }
    public required string Deed { get; init; }
    public string? Before { get; init; }
    public string? After { get; init; }
}
