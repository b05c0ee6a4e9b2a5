using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>
/// The names that sheets and addresses may use: games, divisions, bodies, and what leagues call the divisions they play.
/// Read from data, so that no division stands in the program.
/// </summary>
public sealed class Roster
{
    public List<string> Games { get; } = [];
    public List<string> Divisions { get; } = [];
    public List<Body> Bodies { get; } = [];
    /// <summary>Words by which citations name books of one game only, and the game.</summary>
    public Dictionary<string, string> Cited { get; } = new(StringComparer.Ordinal);
    /// <summary>A league's own name for a division, and the game and division it stands for.</summary>
    public Dictionary<string, string> PlayedAs { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The address taken when none is named: a game, the first one unless named, in its second division.</summary>
    public string UsualCode(string? game = null) => $"{game ?? Games[0]}/{Divisions[1]}";

    /// <summary>A division's place among all, youngest first; -1 when there is no such division.</summary>
    public int PlaceOf(string division) => Divisions.IndexOf(division);

    public Body? Body(string game, string name) =>
        Bodies.FirstOrDefault(b => b.Game == game && (Words.Same(b.Name, name) || b.Aliases.Any(a => Words.Same(a, name))));

    /// <summary>The game whose books a citation names; null when it names none, or books of several games.</summary>
    public string? GameOf(string source)
    {
        string? game = null;
        foreach (var word in source.Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries))
            if (Cited.TryGetValue(word, out var of))
            {
                if (game is not null && game != of) return null;
                game = of;
            }
        return game;
    }

    /// <summary>Reads lines such as "game softball", "division 12U", "body softball USA (ASA): title", "cited softball: SB, FP" and "SB 12U = softball/12U".</summary>
    public static Roster Read(string file, string text, List<Finding> findings)
    {
        var roster = new Roster();
        foreach (var line in SourceLine.Of(text))
        {
            var word = line.Text.Split(' ', 2);
            var rest = word.Length > 1 ? word[1].Trim() : "";
            if (word[0] == "game" && rest != "") roster.Games.Add(rest);
            else if (word[0] == "division" && rest != "") roster.Divisions.Add(rest);
            else if (word[0] == "body" && BodyLine(rest) is { } body) roster.Bodies.Add(body);
            else if (word[0] == "cited" && rest.Split(':') is [var game, var names] && roster.Games.Contains(game.Trim()))
                foreach (var name in names.Split(',')) roster.Cited[name.Trim()] = game.Trim();
            else if (line.Text.Split('=') is [var played, var address] && CodeAddress.Read(address.Trim()) is { } code)
                roster.PlayedAs[played.Trim()] = code.ToString();
            else
                findings.Add(new(FindingKind.UnreadableLine, file, line.Number,
                    $"cannot read '{line.Short}'; write 'game …', 'division …', 'body GAME NAME: title', 'cited GAME: word, word' or 'NAME AS PLAYED = game/division'"));
        }
        return roster;
    }

    private static Body? BodyLine(string text)
    {
        var colon = text.IndexOf(':');
        if (colon < 0) return null;
        var head = text[..colon].Split(' ', 3, StringSplitOptions.RemoveEmptyEntries);
        if (head.Length < 2) return null;
        var aliases = head.Length == 3 ? head[2].Trim('(', ')').Split(',').Select(a => a.Trim()).ToList() : [];
        return new(head[1], head[0], text[(colon + 1)..].Trim(), aliases);
    }
}
