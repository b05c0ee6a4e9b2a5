using PdfSharp.Drawing;
using Umpirage.District.Cards;

namespace Umpirage.Paper;

/// <summary>Puts the parts of one card on its pages, one after the other.</summary>
internal sealed class CardWriter
{
    private static readonly XPen Thin = new(XColors.Black, 0.5), Thick = new(XColors.Black, 1);

    private readonly Pages pages;
    private readonly Card card;

    public CardWriter(Pages pages, Card card)
    {
        (this.pages, this.card) = (pages, card);
        Begin();
    }

    private double Size => pages.Text;
    private double Small => pages.Text * 0.88;
    private double Gap => pages.Text * 0.3;

    private void Begin() => pages.Begin(pages.Count == 0 ? card.Title : $"{card.Title}, page {pages.Count + 1}", card.Under);

    /// <param name="next">What follows: a heading stays on the page of it.</param>
    public void Put(CardPart part, CardPart? next)
    {
        if (part is CardPart.OtherSide) { Begin(); return; }
        if (part is CardPart.Grid grid) { Grid(grid); return; }
        var high = High(part) + (part is CardPart.Heading && next is not null ? Least(next) : 0);
        if (high > pages.Room) Begin();
        if (High(part) > pages.Room) throw new InvalidOperationException($"'{card.Title}': a part does not fit a page of its own");
        Draw(part);
    }

    /// <summary>Room that the beginning of a part needs.</summary>
    private double Least(CardPart part) => part is CardPart.Grid grid ? Head(grid) + (grid.Rows.Count > 0 ? Row(grid, grid.Rows[0]) : 0) : part is CardPart.OtherSide ? 0 : High(part);

    private double High(CardPart part) => part switch
    {
        CardPart.Heading h => Gap * 2 + Text(h.Words, Size * 1.12, true, pages.Width) + Gap,
        CardPart.Line l => Text(l.Words, Size, l.Strong, pages.Width) + (l.Beside == "" ? 0 : Text(l.Beside, Small, false, pages.Width)) + Gap,
        CardPart.Key k => Text(k.Label, Small, false, pages.Width) + Text(k.Words, Size * 1.5, true, pages.Width) + Gap,
        CardPart.Tick t => Boxes(t).Sum(b => b.Select(w => Text(w, Size, false, pages.Width - Box * 1.6)).Max()) + Gap,
        CardPart.Write w => Ruled(w).Sum() + Gap,
        CardPart.Note n => Text(n.Words, Size, true, pages.Width - 4 * Gap) + 3 * Gap,
        _ => throw new NotSupportedException(part.GetType().Name),
    };

    private double Text(string words, double size, bool bold, double width) => pages.Fold(words, size, bold, width).Count * size * Pages.Leading;

    private double Box => Size * 0.95;

    /// <summary>Heights of a thing to write in: its name, with a line behind it where there is room, and further lines.</summary>
    private IEnumerable<double> Ruled(CardPart.Write write)
    {
        var beside = Beside(write) ? 1 : 0;
        return [Text(write.Words, Size, false, pages.Width) + (beside > 0 ? Rule - Size * Pages.Leading : 0), .. Enumerable.Repeat(Rule, write.Lines - beside)];
    }

    /// <summary>Room for handwriting: 7 mm on cards, 8 mm on sheets.</summary>
    private double Rule => (card.Kind == LeafKind.Card ? 7 : 8) * Pages.Millimetre;

    private bool Beside(CardPart.Write write) => pages.Wide(write.Words, Size, false) < pages.Width * 0.6;

    private void Draw(CardPart part)
    {
        switch (part)
        {
            case CardPart.Heading h:
                pages.At += Gap * 2;
                pages.TryLine(h.Words, Size * 1.12, bold: true);
                Line(Thick, pages.Left, pages.At, pages.Width);
                pages.At += Gap;
                break;
            case CardPart.Line l:
                pages.TryLine(l.Words, Size, l.Strong);
                if (l.Beside != "") pages.TryLine(l.Beside, Small);
                pages.At += Gap;
                break;
            case CardPart.Key k:
                pages.TryLine(k.Label, Small);
                pages.TryLine(k.Words, Size * 1.5, bold: true);
                pages.At += Gap;
                break;
            case CardPart.Tick t:
                foreach (var row in Boxes(t)) Tick(row);
                pages.At += Gap;
                break;
            case CardPart.Write w: Write(w); break;
            case CardPart.Note n:
                var high = High(n) - Gap;
                pages.Pen.DrawRectangle(Thick, pages.Left, pages.At, pages.Width, high);
                pages.At += Gap;
                foreach (var line in pages.Fold(n.Words, Size, true, pages.Width - 4 * Gap)) pages.Put(line, Size, true, 2 * Gap);
                pages.At += 2 * Gap;
                break;
        }
    }

    /// <summary>Boxes with their words, as many in a row as there is room for.</summary>
    private List<List<string>> Boxes(CardPart.Tick tick)
    {
        var rows = new List<List<string>>();
        var left = 0d;
        foreach (var words in tick.Words)
        {
            var wide = Wide(words);
            if (rows.Count == 0 || left + wide > pages.Width) { rows.Add([]); left = 0; }
            rows[^1].Add(words);
            left += wide;
        }
        return rows;
    }

    private double Wide(string words) => Box * 3 + pages.Wide(words, Size, false);

    private void Tick(List<string> row)
    {
        var (top, left, low) = (pages.At, 0d, pages.At);
        foreach (var words in row)
        {
            pages.At = top;
            pages.Pen.DrawRectangle(Thick, pages.Left + left + 0.5, top + Size * 0.18, Box, Box);
            foreach (var line in pages.Fold(words, Size, false, pages.Width - left - Box * 1.6)) pages.Put(line, Size, false, left + Box * 1.6);
            (left, low) = (left + Wide(words), Math.Max(low, pages.At));
        }
        pages.At = low;
    }

    private void Write(CardPart.Write write)
    {
        var beside = Beside(write);
        if (beside)
        {
            pages.At += Rule - Size * Pages.Leading;
            var from = pages.Wide(write.Words, Size, false) + Gap * 2;
            pages.TryLine(write.Words, Size);
            Line(Thin, pages.Left + from, pages.At - Size * 0.1, pages.Width - from);
        }
        else pages.TryLine(write.Words, Size);
        for (var i = beside ? 1 : 0; i < write.Lines; i++)
        {
            pages.At += Rule;
            Line(Thin, pages.Left, pages.At - Size * 0.1, pages.Width);
        }
        pages.At += Gap;
    }

    private void Grid(CardPart.Grid grid)
    {
        if (Head(grid) + (grid.Rows.Count > 0 ? Row(grid, grid.Rows[0]) : 0) > pages.Room) Begin();
        Cells(grid, [.. grid.Columns.Select(c => c.Head)], Small, true, Head(grid));
        foreach (var row in grid.Rows)
        {
            var high = Row(grid, row);
            if (high > pages.Room)
            {
                Begin();
                Cells(grid, [.. grid.Columns.Select(c => c.Head)], Small, true, Head(grid));
            }
            Cells(grid, row, Small, false, high);
        }
        pages.At += Gap * 2;
    }

    private double Head(CardPart.Grid grid) => Widths(grid).Zip(grid.Columns).Max(c => Text(c.Second.Head, Small, true, c.First - Pad * 2)) + Pad * 2;

    private double Row(CardPart.Grid grid, IReadOnlyList<string> row) =>
        Math.Max(grid.Tall * Pages.Millimetre, Widths(grid).Zip(row).Max(c => c.Second == "" ? 0 : Text(c.Second, Small, false, c.First - Pad * 2)) + Pad * 2);

    private double Pad => Size * 0.22;

    private IEnumerable<double> Widths(CardPart.Grid grid) => grid.Columns.Select(c => c.Share / grid.Columns.Sum(x => x.Share) * pages.Width);

    private void Cells(CardPart.Grid grid, IReadOnlyList<string> row, double size, bool bold, double high)
    {
        var (top, left) = (pages.At, pages.Left);
        foreach (var (width, words) in Widths(grid).Zip(row))
        {
            pages.Pen.DrawRectangle(bold ? Thick : Thin, left, top, width, high);
            pages.At = top + Pad;
            foreach (var line in pages.Fold(words, size, bold, width - Pad * 2)) pages.Put(line, size, bold, left - pages.Left + Pad);
            left += width;
        }
        pages.At = top + high;
    }

    private void Line(XPen pen, double left, double at, double wide) => pages.Pen.DrawLine(pen, left, at, left + wide, at);
}
