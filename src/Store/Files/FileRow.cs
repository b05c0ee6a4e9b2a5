namespace Umpirage.Store.Files;

/// <summary>A row as written: its number as a spreadsheet counts it, and header → cell.</summary>
public sealed record FileRow(int Number, IReadOnlyDictionary<string, string> Cells);
