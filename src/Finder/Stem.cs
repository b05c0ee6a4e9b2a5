namespace Umpirage.Finder;

/// <summary>Cuts the endings of English words, so that "tagged", "tags" and "tagging" are one word. Crude, but the same on both sides.</summary>
internal static class Stem
{
    public static string Of(string word)
    {
        if (word.EndsWith("'s", StringComparison.Ordinal)) word = word[..^2];
        if (word.Length <= 3) return word;
        if (word.EndsWith("ies", StringComparison.Ordinal)) return word[..^3] + "y";
        if (word.EndsWith("sses", StringComparison.Ordinal)) return word[..^2];
        if (word.EndsWith('s') && !word.EndsWith("ss", StringComparison.Ordinal) && !word.EndsWith("us", StringComparison.Ordinal)) word = word[..^1];
        if (word.Length > 5 && word.EndsWith("ing", StringComparison.Ordinal)) word = Undoubled(word[..^3]);
        else if (word.Length > 4 && word.EndsWith("ed", StringComparison.Ordinal)) word = Undoubled(word[..^2]);
        else if (word.Length > 5 && word.EndsWith("ly", StringComparison.Ordinal)) word = word[..^2];
        return word.Length > 3 && word.EndsWith('e') ? word[..^1] : word;
    }

    private static string Undoubled(string word) =>
        word.Length > 3 && word[^1] == word[^2] && word[^1] is not ('l' or 's' or 'z') ? word[..^1] : word;
}
