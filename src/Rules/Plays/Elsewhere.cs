using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>How another division or the other game rules the same play.</summary>
public sealed record Elsewhere(string Code, string InWords, bool Same)
{
    /// <summary>The play under the other divisions of its game and under the other game, at large, on the same day. Codes that rule alike are told once.</summary>
    public static IReadOnlyList<Elsewhere> Of(Codebook book, Play play, Ruling here, DateOnly today)
    {
        var code = here.Table.Sheet.Code;
        var found = new List<(string Address, string Words, bool Same)>();
        foreach (var game in book.Roster.Games)
            foreach (var division in book.Roster.Divisions)
            {
                if (game == code.Game && division == code.Division) continue;
                var address = (game == code.Game ? code.Address with { Division = division } : new CodeAddress(game, division, [], code.Date)).ToString();
                if (book.Sheet(play.Sheet) is { } sheet && !sheet.Speaks(game)) { found.Add((game, $"the subject does not exist in {game}", false)); continue; }
                var other = Casebook.Rule(book, play, today, [], address);
                found.Add((address, other is null ? "what was said cannot be under this code" : other.InWords, other is not null && other.InWords == here.InWords));
            }
        return [.. found.GroupBy(f => f.Words).Select(g => new Elsewhere(string.Join(", ", g.Select(f => f.Address).Distinct()), g.Key, g.First().Same))];
    }
}
