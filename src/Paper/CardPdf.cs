using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;
using Umpirage.District.Cards;

namespace Umpirage.Paper;

/// <summary>Cards on paper: headings, sentences, tables, boxes to tick and lines to write on, with the stamp at the foot of every page. A page ends between parts, or between the rows of a table.</summary>
public static class CardPdf
{
    /// <summary>A card has two sides: where its text does not find room on them it is set smaller, but never below this many points.</summary>
    private const double Smallest = 8.5, Sides = 2;

    public static byte[] Of(Card card, Leaf leaf)
    {
        using var asked = Set(card, leaf);
        if (leaf.Kind == LeafKind.Card && asked.Count > Sides)
            for (var text = leaf.Text - 0.25; text >= Smallest; text -= 0.25)
            {
                using var smaller = Set(card, leaf with { Text = text });
                if (smaller.Count <= Sides) return smaller.Bytes();
            }
        // a sheet, or more than two sides in any case: at the size that was asked
        return asked.Bytes();
    }

    private static Pages Set(Card card, Leaf leaf)
    {
        var pages = new Pages(card.Title, card.Foot, leaf);
        var writer = new CardWriter(pages, card);
        for (var i = 0; i < card.Parts.Count; i++) writer.Put(card.Parts[i], i + 1 < card.Parts.Count ? card.Parts[i + 1] : null);
        return pages;
    }

    /// <summary>Several cards in one document, each on its own paper.</summary>
    public static byte[] Of(IEnumerable<Card> cards, Func<LeafKind, Leaf> leaf)
    {
        using var all = new PdfDocument();
        foreach (var card in cards)
        {
            using var one = PdfReader.Open(new MemoryStream(Of(card, leaf(card.Kind))), PdfDocumentOpenMode.Import);
            foreach (var page in one.Pages) all.AddPage(page);
        }
        all.Info.Title = "Cards of a game";
        using var stream = new MemoryStream();
        all.Save(stream, closeStream: false);
        return stream.ToArray();
    }
}
