using Umpirage.District.Diamonds;
using Umpirage.District.Pitchers;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Cards;

/// <summary>One code on one day, asked by cards: its stamp, its sheets and its field, each worked out once.</summary>
public sealed class CardCode
{
    private const int MostSheets = 400;

    private readonly WorkedOut<string, AskedSheet> sheets;
    private readonly Lazy<(Layout? Layout, IReadOnlyList<Finding> Findings)> layout;
    private readonly Lazy<CardStamp> stamp;

    internal CardCode(Code code)
    {
        Code = code;
        sheets = new((name, found) => Casebook.Table(code.Book, code.Address.ToString(), name, code.Date, "cards", found) is { } table ? new(table) : null, MostSheets);
        layout = new(() => { var found = new List<Finding>(); return (Layout.Of(code, found), found); });
        stamp = new(() => CardStamp.Of(code));
    }

    public Code Code { get; }
    public CardStamp Stamp => stamp.Value;

    /// <summary>A sheet under this code; null, with the reasons, when it cannot be worked out.</summary>
    public AskedSheet? Sheet(string name, List<Finding> findings) => sheets.Of(name, findings);

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

    private readonly WorkedOut<(string Address, DateOnly Day), CardCode> known = new((key, found) =>
        Casebook.Code(book, key.Address, key.Day, fault => found.Add(new(FindingKind.UnknownWord, "cards", 0, fault))) is { } code ? new(code) : null, Most);

    public Codebook Book => book;
    public PitchingCodes Pitching { get; } = new(book);

    /// <summary>Null, with the reasons, when the address names something that is not there.</summary>
    public CardCode? Of(string address, DateOnly day, List<Finding> findings) => known.Of((address, day), findings);
}
