namespace Umpirage.District.Cards;

/// <summary>A piece of a card, the same on paper and on a screen.</summary>
public abstract record CardPart
{
    private CardPart() { }

    public sealed record Heading(string Words) : CardPart;

    /// <summary>A sentence; <paramref name="Beside"/> stands under it, smaller.</summary>
    public sealed record Line(string Words, string Beside = "", bool Strong = false) : CardPart;

    /// <summary>An answer that is read from an arm's length, with what it answers.</summary>
    public sealed record Key(string Label, string Words) : CardPart;

    /// <summary>A table. Rows are as high as their words, or <paramref name="Tall"/> millimetres where somebody writes in them.</summary>
    public sealed record Grid(IReadOnlyList<GridColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows, double Tall = 0) : CardPart;

    /// <summary>Boxes to tick, side by side as far as there is room.</summary>
    public sealed record Tick(params IReadOnlyList<string> Words) : CardPart;

    /// <summary>Something to write in: its name, and how many lines.</summary>
    public sealed record Write(string Words, int Lines = 1) : CardPart;

    /// <summary>A caution.</summary>
    public sealed record Note(string Words) : CardPart;

    /// <summary>What follows stands on the other side.</summary>
    public sealed record OtherSide : CardPart;
}

/// <summary>A column of a table, and its share of the width beside the others.</summary>
public sealed record GridColumn(string Head, double Share);
