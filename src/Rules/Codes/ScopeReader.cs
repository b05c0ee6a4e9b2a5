using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Reads the left side of a value line: "softball NFHS 12U 14U from 2020-01-01 until 2023-12-31".</summary>
internal static class ScopeReader
{
    /// <summary>Null with the reason when a word is not known. In a layer the game may be left out.</summary>
    public static Scope? Read(string text, Roster roster, bool gameNeeded, out string fault)
    {
        fault = "";
        string? game = null, body = null, bodyWord = null;
        var divisions = new List<string>();
        DateOnly? from = null, until = null;
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < words.Length; i++)
        {
            var word = words[i];
            if (word is "from" or "until")
            {
                if (i + 1 >= words.Length || !CodeAddress.TryDate(words[i + 1], out var date)) { fault = $"'{word}' needs a date such as 2020-01-01"; return null; }
                if (word == "from") from = date; else until = date;
                i++;
            }
            else if (roster.Games.Contains(word) && game is null) game = word;
            else if (roster.Divisions.Contains(word)) divisions.Add(word);
            else if (bodyWord is null && roster.Bodies.Any(b => Words.Same(b.Name, word) || b.Aliases.Any(a => Words.Same(a, word)))) bodyWord = word;
            else
            {
                var known = roster.Games.Concat(roster.Divisions).Concat(roster.Bodies.Select(b => b.Name)).Distinct().ToList();
                fault = $"'{word}' is no game, division or body; {Words.Offer(word, known)}";
                return null;
            }
        }
        if (gameNeeded && game is null) { fault = $"say which game the value is for: {Words.Or(roster.Games)}"; return null; }
        if (from > until) { fault = "'from' is later than 'until'"; return null; }
        if (bodyWord is not null)
        {
            body = roster.Body(game ?? "", bodyWord)?.Name;
            if (body is null) { fault = $"'{bodyWord}' has no book for {game ?? "a game that is not named"}"; return null; }
        }
        return new(game, body, divisions, from, until);
    }
}
