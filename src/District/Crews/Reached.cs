using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews;

/// <summary>Whom somebody has on the phone and how far away each is, as typed: "Bram 14, Juno Kirkmallow 5 min, umpire-f9-t".</summary>
public static class Reached
{
    /// <summary>The longest way that is believed, in minutes.</summary>
    public const int Longest = 600;

    /// <summary>Minutes by person; nothing where none were typed. A name that fits nobody or several is a fault, and so is one without end.</summary>
    public static IReadOnlyDictionary<string, int?> Read(CrewPlan plan, string text, List<string> faults)
    {
        var reached = new Dictionary<string, int?>();
        foreach (var part in text.Split([',', ';', '\n', '\r'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var words = part.Split(' ', StringSplitOptions.RemoveEmptyEntries).ToList();
            if (words.Count > 1 && Words.Same(words[^1].TrimEnd('.'), "min")) words.RemoveAt(words.Count - 1);
            int? minutes = null;
            if (words.Count > 1 && char.IsAsciiDigit(words[^1][0]))
            {
                if (Minutes(words[^1]) is not { } read) { faults.Add($"'{part}': found '{words[^1]}'; allowed is whole minutes from 0 to {Longest}"); continue; }
                (minutes, words) = (read, words[..^1]);
            }
            var name = string.Join(' ', words);
            var fits = Fits(plan, name);
            if (fits.Count == 1) reached[fits[0].Key] = minutes;
            else if (fits.Count == 0) faults.Add($"there is no umpire '{name}'; {Words.Offer(name, [.. plan.Officials.Select(p => p.Name)])}");
            else faults.Add($"'{name}' fits {fits.Count} umpires, {Words.And([.. fits.Take(5).Select(p => p.Name)])}{(fits.Count > 5 ? " among them" : "")}; write more of the name, or the key");
        }
        return reached;
    }

    /// <summary>Whole minutes as typed, with or without "min"; nothing when they cannot be used.</summary>
    public static int? Minutes(string typed)
    {
        var bare = typed.Trim().TrimEnd('.');
        if (bare.EndsWith("min", StringComparison.OrdinalIgnoreCase)) bare = bare[..^3].TrimEnd();
        return int.TryParse(bare, NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) && minutes <= Longest ? minutes : null;
    }

    /// <summary>By the key, by the whole name, then by how the name begins.</summary>
    private static List<CrewPerson> Fits(CrewPlan plan, string name)
    {
        var all = plan.Officials.OrderBy(p => p.Name, StringComparer.Ordinal).ToList();
        if (all.Where(p => p.Key == name || Words.Same(p.Name, name)).ToList() is { Count: > 0 } whole) return whole;
        return [.. all.Where(p => p.Name.StartsWith(name, StringComparison.OrdinalIgnoreCase) || $"{p.Person.Given} {p.Person.Family}".StartsWith(name, StringComparison.OrdinalIgnoreCase) || p.Person.Family.StartsWith(name, StringComparison.OrdinalIgnoreCase))];
    }
}
