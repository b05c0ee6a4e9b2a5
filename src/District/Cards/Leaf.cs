namespace Umpirage.District.Cards;

/// <summary>A card is carried in the hand or the line-up holder; a sheet lies on a clipboard.</summary>
public enum LeafKind { Card, Sheet }

/// <summary>A kind of paper: its sides and margin in millimetres, and the size of its text in points.</summary>
public sealed record Leaf(string Name, LeafKind Kind, double Wide, double Tall, double Margin, double Text)
{
    /// <summary>A6 and A4 (ISO 216), index cards of 3 by 5 inches, letter paper of 8 1/2 by 11 inches. The first of a kind is taken when nobody names one.</summary>
    public static IReadOnlyList<Leaf> All { get; } =
    [
        new("A6", LeafKind.Card, 105, 148, 6, 9.5), new("3x5", LeafKind.Card, 76.2, 127, 5, 8.5),
        new("letter", LeafKind.Sheet, 215.9, 279.4, 14, 11), new("A4", LeafKind.Sheet, 210, 297, 14, 11),
    ];

    public static Leaf Usual(LeafKind kind) => All.First(l => l.Kind == kind);
}
