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
        var found = new List<Found>();
        foreach (var game in book.Roster.Games)
            foreach (var division in book.Roster.Divisions)
            {
                if (game == code.Game && division == code.Division) continue;
                var address = (game == code.Game ? code.Address with { Division = division } : new CodeAddress(game, division, [], code.Date)).ToString();
                var words = book.Sheet(play.Sheet) is { } sheet && !sheet.Speaks(game) ? "the subject does not exist here"
                    : Casebook.Rule(book, play, today, [], address)?.InWords ?? "what was said cannot be under this code";
                found.Add(new(game, division, words));
            }
        return [.. found.GroupBy(f => f.Words).Select(g => new Elsewhere(
            string.Join("; ", g.GroupBy(f => f.Game).Select(f => $"{f.Key} {string.Join(", ", f.Select(x => x.Division))}")), g.Key, g.Key == here.InWords))];
    }

    private sealed record Found(string Game, string Division, string Words);
}
