namespace Umpirage.District.Options;

public enum OptionStatus { Proposed, Published }

/// <summary>
/// A layer of local options as a league wrote it, in the words of a .layer file. A published one carries a version that never changes again;
/// the next proposal is a new one.
/// </summary>
public sealed record LocalOption(string Layer, int Version, OptionStatus Status, string League, string Text, string By, DateTime At);
