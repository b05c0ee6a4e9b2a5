namespace Umpirage.District.Cards;

/// <summary>What is said on one card of one game, ready to be printed or shown.</summary>
/// <param name="Name">A short name, as in files.</param>
/// <param name="Under">The game in one line: teams, day and time, diamond, division.</param>
public sealed record Card(string Name, string Title, string Under, LeafKind Kind, CardStamp Stamp, IReadOnlyList<CardPart> Parts)
{
    /// <summary>Stands at the foot of every page.</summary>
    public string Foot => $"{Stamp.InWords}. Advice from a stated edition; the printed rule book and local authority rule.";
}
