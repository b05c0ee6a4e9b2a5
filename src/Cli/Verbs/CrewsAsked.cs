using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.Cli.Verbs;

/// <summary>What was typed after 'crews'. Every fault at once.</summary>
internal sealed record CrewsAsked(string Deed, string Person, string Game, string? Place, DateOnly? Week, double? Seconds, bool Save, double? Heat, TimeOnly? At, IReadOnlyDictionary<string, int>? Away)
{
    public static CrewsAsked Read(IReadOnlyList<string> typed, List<string> faults)
    {
        var words = new List<string>();
        var asked = new CrewsAsked("", "", "", null, null, null, false, null, null, null);
        for (var i = 0; i < typed.Count; i++)
        {
            var option = typed[i];
            if (option == "--save") { asked = asked with { Save = true }; continue; }
            if (!option.StartsWith("--", StringComparison.Ordinal)) { words.Add(option); continue; }
            if (i + 1 >= typed.Count) { faults.Add($"{option}: found nothing after it; allowed is a value"); continue; }
            var value = typed[++i];
            switch (option)
            {
                case "--week": if (CodeAddress.TryDate(value, out var day)) asked = asked with { Week = day }; else Fault("a day written 2026-05-18"); break;
                case "--seconds": if (Number(value, 1, 3600) is { } s) asked = asked with { Seconds = s }; else Fault("a number of seconds from 1 to 3600"); break;
                case "--heat": if (Number(value, 40, 180) is { } f) asked = asked with { Heat = f }; else Fault("a heat index from 40 to 180 F"); break;
                case "--at": if (TimeOnly.TryParseExact(value, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var at)) asked = asked with { At = at }; else Fault("a time of day written 17:40"); break;
                case "--away": asked = asked with { Away = Minutes(value, faults) }; break;
                default: faults.Add($"there is no option '{option}'; {Words.Offer(option, ["--week", "--seconds", "--save", "--heat", "--at", "--away"])}"); break;
            }
            void Fault(string allowed) => faults.Add($"{option}: found '{value}'; allowed is {allowed}");
        }
        asked = asked with { Deed = words.FirstOrDefault() ?? "" };
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

    private static double? Number(string text, double low, double high) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= low && number <= high ? number : null;

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
