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
        var sheet = here.Table.Sheet.Bound.Sheet;
        var found = new List<Found>();
        // codes that give the sheet the same values rule alike, and are ruled once
        var known = new Dictionary<string, string> { [Values(here.Table.Sheet.Bound, code)] = here.InWords };
        foreach (var game in book.Roster.Games)
            foreach (var division in book.Roster.Divisions)
            {
                if (game == code.Game && division == code.Division) continue;
                var address = game == code.Game ? code.Address with { Division = division } : new CodeAddress(game, division, [], code.Date);
                found.Add(new(game, division, sheet.Speaks(game) ? Words(address) : "the subject does not exist here"));
            }
        return [.. found.GroupBy(f => f.Words).Select(g => new Elsewhere(
            string.Join("; ", g.GroupBy(f => f.Game).Select(f => $"{f.Key} {string.Join(", ", f.Select(x => x.Division))}")), g.Key, g.Key == here.InWords))];

        string Words(CodeAddress address)
        {
            if (Codes.Code.Of(book, address, today, []) is not { } other || book.Bind(sheet, other.Stack, []) is not { } bound) return Unable;
            var values = Values(bound, other);
            if (!known.TryGetValue(values, out var words)) known[values] = words = Casebook.Rule(book, play, today, [], address.ToString())?.InWords ?? Unable;
            return words;
        }
    }

    private const string Unable = "what was said cannot be under this code";

    private static string Values(BoundSheet bound, Codes.Code code) => string.Join('\n', bound.Parameters.Select(p => code.Value(p)?.Value ?? ""));

    private sealed record Found(string Game, string Division, string Words);
}
