using System.Collections.Concurrent;
using Umpirage.District.Diamonds;
using Umpirage.District.Pitchers;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Cards;

/// <summary>One code on one day, asked by cards: its stamp, its sheets and its field, each worked out once.</summary>
public sealed class CardCode
{
    private readonly ConcurrentDictionary<string, Lazy<(AskedSheet? Sheet, IReadOnlyList<Finding> Findings)>> sheets = [];
    private readonly Lazy<(Layout? Layout, IReadOnlyList<Finding> Findings)> layout;
    private readonly Lazy<CardStamp> stamp;

    internal CardCode(Code code)
    {
        Code = code;
        layout = new(() => { var found = new List<Finding>(); return (Layout.Of(code, found), found); });
        stamp = new(() => CardStamp.Of(code));
    }

    public Code Code { get; }
    public CardStamp Stamp => stamp.Value;

    /// <summary>A sheet under this code; null, with the reasons, when it cannot be worked out.</summary>
    public AskedSheet? Sheet(string name, List<Finding> findings)
    {
        var (sheet, faults) = sheets.GetOrAdd(name, n => new(() =>
        {
            var found = new List<Finding>();
            return (Casebook.Table(Code.Book, Code.Address.ToString(), n, Code.Date, "cards", found) is { } table ? new AskedSheet(table) : null, found);
        })).Value;
        findings.AddRange(faults);
        return sheet;
    }

    public Layout? Field(List<Finding> findings)
    {
        findings.AddRange(layout.Value.Findings);
        return layout.Value.Layout;
    }
}

/// <summary>The codes of a codebook as cards ask them.</summary>
public sealed class CardCodes(Codebook book)
{
    private const int Most = 400;

    private readonly ConcurrentDictionary<(string Address, DateOnly Day), Lazy<(CardCode? Code, IReadOnlyList<string> Faults)>> known = [];

    public Codebook Book => book;
    public PitchingCodes Pitching { get; } = new(book);

    /// <summary>Null, with the reasons, when the address names something that is not there.</summary>
    public CardCode? Of(string address, DateOnly day, List<Finding> findings)
    {
        if (known.Count > Most) known.Clear();
        var (code, faults) = known.GetOrAdd((address, day), key => new(() =>
        {
            var found = new List<string>();
            return (Casebook.Code(book, key.Address, key.Day, found.Add) is { } c ? new CardCode(c) : null, found);
        })).Value;
        findings.AddRange(faults.Select(f => new Finding(FindingKind.UnknownWord, "cards", 0, f)));
        return code;
    }
}
