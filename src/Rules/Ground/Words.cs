using System.Text;

namespace Umpirage.Rules.Ground;

/// <summary>Small helps for reading and telling in words: lists, near words, tidy text.</summary>
public static class Words
{
    /// <summary>A name as part of a file's name or an address: "batter's box" is "batters-box".</summary>
    public static string Slug(string name) =>
        string.Join('-', new string([.. name.ToLowerInvariant().Where(c => c is not ('\'' or ',' or ':'))]).Split(' ', StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Folds white space and typographic quotes, so that two ways of typing a word are one word.</summary>
    public static string Tidy(string text)
    {
        var tidy = new StringBuilder(text.Length);
        var space = false;
        foreach (var raw in text)
        {
            var c = raw switch { '\u2019' or '\u2018' => '\'', '\u00a0' or '\t' => ' ', _ => raw };
            if (char.IsWhiteSpace(c)) { space = tidy.Length > 0; continue; }
            if (space) tidy.Append(' ');
            space = false;
            tidy.Append(c);
        }
        return tidy.ToString();
    }

    public static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    /// <summary>Reads one of an enum's names, in any case; no number and no list of names.</summary>
    internal static bool TryName<T>(string word, out T value) where T : struct, Enum => Enum.TryParse(word, true, out value) && Enum.GetNames<T>().Any(name => Same(name, word));

    /// <summary>"a, b or c".</summary>
    public static string Or(IReadOnlyList<string> words) => Join(words, " or ");

    /// <summary>With a capital at the beginning, as a sentence or a heading begins.</summary>
    public static string Upper(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>"a, b and c".</summary>
    public static string And(IReadOnlyList<string> words) => Join(words, " and ");

    private static string Join(IReadOnlyList<string> words, string last) => words.Count switch
    {
        0 => "nothing",
        1 => words[0],
        _ => string.Join(", ", words.Take(words.Count - 1)) + last + words[^1],
    };

    /// <summary>The known words nearest to what was typed: at most three, only when near enough to be a slip. Looks at the first hundred names.</summary>
    public static IReadOnlyList<string> Near(string typed, IEnumerable<string> known)
    {
        if (typed.Length is 0 or > 60) return [];
        var limit = Math.Clamp(typed.Length / 3, 1, 4);
        return
        [
            .. known.Distinct(StringComparer.OrdinalIgnoreCase).Take(100).Where(k => Math.Abs(k.Length - typed.Length) <= limit)
                .Select(k => (Word: k, Distance: Distance(typed, k, limit)))
                .Where(k => k.Distance <= limit)
                .OrderBy(k => k.Distance).ThenBy(k => k.Word, StringComparer.Ordinal).Take(3).Select(k => k.Word),
        ];
    }

    /// <summary>"did you mean 'x' or 'y'?"</summary>
    public static string Meant(IReadOnlyList<string> near) => $"did you mean {Or([.. near.Select(n => $"'{n}'")])}?";

    /// <summary>"did you mean 'x'?" when something is near; otherwise what may stand there.</summary>
    public static string Offer(string typed, IReadOnlyList<string> known)
    {
        var near = Near(typed, known);
        if (near.Count > 0) return Meant(near);
        return known.Count switch { 0 => "there is none", <= 12 => "it may be " + Or(known), _ => $"it may be one of {known.Count} names" };
    }

    /// <summary>The edit distance, or more than the limit: only a band of that width is looked at.</summary>
    private static int Distance(string a, string b, int limit)
    {
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++) row[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var (from, to) = (Math.Max(1, i - limit), Math.Min(b.Length, i + limit));
            var diagonal = row[from - 1];
            row[from - 1] = from == 1 ? i : limit + 1;
            for (var j = from; j <= to; j++)
            {
                var above = j == i + limit ? limit + 1 : row[j];
                var cost = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1;
                (diagonal, row[j]) = (row[j], Math.Min(Math.Min(above + 1, row[j - 1] + 1), diagonal + cost));
            }
        }
        return row[b.Length];
    }
}
