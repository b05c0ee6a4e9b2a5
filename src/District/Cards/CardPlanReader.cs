using System.Globalization;
using Umpirage.District.Gear;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Cards;

/// <summary>Reads a card's plan, every fault at once. The lines are shown in codes/CARDS.md.</summary>
public static class CardPlanReader
{
    private const string Form = "write 'Part: heading', 'Side', 'Order', 'say: …', 'strong: …', 'tick: … | …', 'write 2: …', 'before 30: …', 'blank 9 rows of 8 mm: column 3 | column 1', 'and …' to go on in the same line, 'make: name', 'caution: name', 'faults: sheet, fact = words' or 'sheet: value = words'";

    /// <summary>Null when a line cannot be read; findings say why.</summary>
    public static CardPlan? Read(string file, string text, Codebook book, List<Finding> findings)
    {
        var before = findings.Count;
        void Fault(SourceLine line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line.Number, message));
        string name = "", title = "";
        var kind = LeafKind.Card;
        var (items, order, ordering) = (new List<CardItem>(), new List<Spoken>(), false);
        foreach (var line in SourceLine.Of(text))
        {
            if (line.Text == "Side") { items.Add(new CardItem.Fixed(new CardPart.OtherSide())); continue; }
            if (line.Text == "Order") { ordering = true; continue; }
            // what begins with "and" goes on in the line before
            var (joined, said) = line.Text.StartsWith("and ", StringComparison.Ordinal) ? (true, line.Text[4..]) : (false, line.Text);
            var colon = said.IndexOf(": ", StringComparison.Ordinal);
            if (colon < 0) { Fault(line, $"cannot read '{line.Short}'; {Form}"); continue; }
            var (head, rest) = (said[..colon], said[(colon + 2)..]);
            switch (head)
            {
                case "Card": name = rest; break;
                case "title": title = rest; break;
                case "leaf":
                    if (rest is "card" or "sheet") kind = rest == "card" ? LeafKind.Card : LeafKind.Sheet;
                    else Fault(line, $"there is no leaf '{rest}'; it may be card or sheet");
                    break;
                case "Part": ordering = false; items.Add(new CardItem.Fixed(new CardPart.Heading(rest))); break;
                case "say": items.Add(new CardItem.Fixed(new CardPart.Line(rest))); break;
                case "strong": items.Add(new CardItem.Fixed(new CardPart.Line(rest, Strong: true))); break;
                case "tick": items.Add(new CardItem.Fixed(new CardPart.Tick(rest.Split(" | ")))); break;
                case "make":
                    if (Makers.All.ContainsKey(rest)) items.Add(new CardItem.Made(rest));
                    else Fault(line, $"nothing can be made by the name '{rest}'; {Words.Offer(rest, [.. Makers.All.Keys])}");
                    break;
                case "caution":
                    if (Makers.Cautions.TryGetValue(rest, out var caution)) items.Add(new CardItem.Fixed(new CardPart.Note(caution)));
                    else Fault(line, $"there is no caution '{rest}'; {Words.Offer(rest, [.. Makers.Cautions.Keys])}");
                    break;
                case "faults": if (FaultsOf(rest, book, m => Fault(line, m)) is { } faults) items.Add(faults); break;
                case var h when h == "write" || h.StartsWith("write ", StringComparison.Ordinal):
                    if (h == "write") items.Add(new CardItem.Fixed(new CardPart.Write(rest)));
                    else if (int.TryParse(h[6..], NumberStyles.None, CultureInfo.InvariantCulture, out var lines) && lines is > 0 and <= 20) items.Add(new CardItem.Fixed(new CardPart.Write(rest, lines)));
                    else Fault(line, $"'{h}' says no number of lines from 1 to 20; write 'write 2: …'");
                    break;
                case var h when h.StartsWith("before ", StringComparison.Ordinal):
                    if (int.TryParse(h[7..], NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) && minutes is > 0 and <= 240) items.Add(new CardItem.Before(minutes, rest));
                    else Fault(line, $"'{h}' says no number of minutes from 1 to 240; write 'before 30: …'");
                    break;
                case var h when h.StartsWith("blank ", StringComparison.Ordinal): if (Blank(h, rest, m => Fault(line, m)) is { } grid) items.Add(new CardItem.Fixed(grid)); break;
                default:
                    if (SpokenOf(head, rest, book, m => Fault(line, m)) is not { } spoken) break;
                    if (ordering) order.Add(spoken);
                    else items.Add(new CardItem.Value(spoken, joined));
                    break;
            }
        }
        if (name == "" || title == "") findings.Add(new(FindingKind.UnreadableLine, file, 0, "a card has a name and a title: write 'Card: …' and 'title: …'"));
        return findings.Count > before ? null : new(name, title, kind, items, order);
    }

    private static Spoken? SpokenOf(string sheetName, string rest, Codebook book, Action<string> fault)
    {
        if (book.Sheet(sheetName) is not { } sheet) { fault($"'{sheetName}' is neither a word of this file nor a sheet; {Words.Offer(sheetName, [.. book.Sheets.Select(s => s.Name)])}"); return null; }
        var parts = rest.Split(" | ");
        var known = parts[0].IndexOf(" = ", StringComparison.Ordinal);
        if (known < 0) { fault($"'{rest}' says nothing; write 'sheet: value = words | none = other words'"); return null; }
        var named = parts[0][..known];
        var byValue = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var parameter = sheet.Parameters.FirstOrDefault(p => Words.Same(p.Name, named));
        if (parameter is null && named != "known") { fault($"the sheet '{sheet.Name}' has no value '{named}'; {Words.Offer(named, [.. sheet.Parameters.Select(p => p.Name), "known"])}"); return null; }
        foreach (var part in parts.Skip(1))
        {
            var cut = part.IndexOf(" = ", StringComparison.Ordinal);
            if (cut < 0) { fault($"'{part}' says nothing of a value; write 'none = words'"); return null; }
            IReadOnlyList<string> may = parameter is null ? ["yes", "no"] : parameter.Unit is not null ? ["none"] : parameter.Values;
            if (!may.Contains(part[..cut], StringComparer.OrdinalIgnoreCase)) { fault($"'{named}' has no value '{part[..cut]}'; {Words.Offer(part[..cut], may)}"); return null; }
            byValue[part[..cut]] = part[(cut + 3)..];
        }
        return new(sheet.Name, parameter?.Name, parts[0][(known + 3)..], byValue);
    }

    private static CardItem.Faults? FaultsOf(string rest, Codebook book, Action<string> fault)
    {
        var (comma, equals) = (rest.IndexOf(", ", StringComparison.Ordinal), rest.IndexOf(" = ", StringComparison.Ordinal));
        if (comma < 0 || equals < comma) { fault("write 'faults: sheet, fact = words'"); return null; }
        var (sheet, fact) = (rest[..comma], rest[(comma + 2)..equals]);
        if (GearKind.All.All(k => k.Sheet != sheet) || book.Sheet(sheet) is not { } read) { fault($"no gear is looked over by a sheet '{sheet}'; {Words.Offer(sheet, [.. GearKind.All.Select(k => k.Sheet).Distinct()])}"); return null; }
        if (read.Facts.All(f => f.Name != fact)) { fault($"the sheet '{sheet}' has no fact '{fact}'; {Words.Offer(fact, [.. read.Facts.Select(f => f.Name)])}"); return null; }
        return new(sheet, fact, rest[(equals + 3)..]);
    }

    private static CardPart.Grid? Blank(string head, string rest, Action<string> fault)
    {
        var columns = rest.Split(" | ").Select(c => c.LastIndexOf(' ') is > 0 and var at && double.TryParse(c[(at + 1)..], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share) && share > 0 ? new GridColumn(c[..at], share) : null).ToList();
        if (head.Split(' ') is ["blank", var rows, "rows", "of", var tall, "mm"] && int.TryParse(rows, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= 40
            && double.TryParse(tall, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var high) && high is >= 4 and <= 30 && columns.All(c => c is not null))
            // a column of numbers is filled in
            return new([.. columns.Select(c => c!)], [.. Enumerable.Range(1, count).Select(r => columns.Select(c => c!.Head == "#" ? r.ToString(CultureInfo.InvariantCulture) : "").ToList())], high);
        fault("write 'blank 9 rows of 8 mm: column 3 | column 1'; 1 to 40 rows of 4 to 30 mm");
        return null;
    }
}
