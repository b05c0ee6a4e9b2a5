using System.Numerics;

namespace Umpirage.Rules.Codes;

/// <summary>How many cases a sheet has under a code at large, and how many distinct rulings. Any change of meaning moves a number.</summary>
public sealed record TallyLine(string Sheet, string Game, string Division, BigInteger Cases, int Rulings)
{
    public override string ToString() => $"{Sheet}, {Game}/{Division}: {Cases} / {Rulings}";
}

/// <summary>Counts every sheet in every game and division.</summary>
public static class Tally
{
    /// <summary>The day on which the counts are taken, so that they do not move with the calendar.</summary>
    public static DateOnly Day { get; } = new(2026, 5, 16);

    public static IReadOnlyList<TallyLine> Of(Codebook book, IReadOnlyCollection<string>? only = null)
    {
        var lines = new List<TallyLine>();
        foreach (var sheet in book.Sheets.OrderBy(s => s.Name, StringComparer.Ordinal))
            foreach (var game in book.Roster.Games.Where(sheet.Speaks))
                foreach (var division in book.Roster.Divisions)
                {
                    if (only is not null && !only.Contains(sheet.Name)) continue;
                    if (book.Bind(sheet, [], []) is not { } bound || Code.Of(book, new(game, division, [], Day), Day, []) is not { } code) continue;
                    if (CodeSheet.Of(bound, code, []) is not { } under) continue;
                    var table = Table.Of(under);
                    lines.Add(new(sheet.Name, game, division, table.Cases, table.DistinctRulings));
                }
        return lines;
    }
}
