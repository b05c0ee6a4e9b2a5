using System.Globalization;

namespace Umpirage.Cli.Verbs;

/// <summary>What was typed after 'crews'. Every fault at once.</summary>
internal sealed record CrewsAsked(string Deed, string Person, string Game, string? Place, DateOnly? Week, double? Seconds, bool Save, double? Heat, TimeOnly? At, IReadOnlyDictionary<string, int>? Away)
{
    public static CrewsAsked Read(Request request, List<string> faults)
    {
        var options = new Options(request, ["--week", "--seconds", "--heat", "--at", "--away"], ["--save"]);
        var words = options.Words;
        var asked = new CrewsAsked(words.FirstOrDefault() ?? "", "", "", null, options.Day("--week"), options.Number("--seconds", 1, 3600, "a number of seconds"), options.Has("--save"),
            options.Number("--heat", 40, 180, "a heat index in F"), options.Time("--at"), options.Text("--away") is { } away ? Minutes(away, options.Faults) : null);
        faults.AddRange(options.Faults);
        return asked.Deed switch
        {
            "why" => asked with { Person = At(1, "a person's key"), Game = At(2, "a game's key"), Place = words.Count > 3 ? string.Join(' ', words.Skip(3)) : null },
            "freeze" or "thaw" => asked with { Game = At(1, "a game's key") },
            "subs" => asked with { Game = At(1, "a game's key"), Place = words.Count > 2 ? string.Join(' ', words.Skip(2)) : null },
            _ => asked,
        };

        string At(int place, string what)
        {
            if (words.Count > place) return words[place];
            faults.Add($"crews {words[0]}: found nothing; allowed is {what}");
            return "";
        }
    }

    private static Dictionary<string, int> Minutes(string text, List<string> faults)
    {
        var away = new Dictionary<string, int>();
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var at = part.LastIndexOf('=');
            if (at > 0 && int.TryParse(part[(at + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) && minutes <= 600) away[part[..at]] = minutes;
            else faults.Add($"--away: found '{part}'; allowed is PERSON=MINUTES, up to 600");
        }
        return away;
    }
}
