namespace Umpirage.Store.Files;

/// <summary>A column of a file: its header, whether a row may leave it out, and what stands in it.</summary>
public sealed record Column(string Header, bool Needed, string Meaning);
