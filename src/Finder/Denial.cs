namespace Umpirage.Finder;

/// <summary>Words that turn what is said into its contrary.</summary>
internal static class Denial
{
    private static readonly HashSet<string> Denying =
    [
        "no", "not", "never", "nobody", "none", "nothing", "without", "didn't", "doesn't", "don't", "wasn't", "isn't", "weren't", "aren't", "won't", "hadn't", "hasn't", "haven't",
        "couldn't", "can't", "cannot", "neither", "nor", "didnt", "doesnt", "dont", "wasnt", "isnt", "hadnt", "hasnt", "couldnt", "cant", "barely", "hardly", "wouldn't", "refuses", "refused",
    ];

    public static bool Is(Heard word) => Denying.Contains(word.Said.ToLowerInvariant()) || word.Meant.Split(' ').Any(Denying.Contains);

    public static int Count(Utterance said, int first, int last)
    {
        var count = 0;
        for (var w = Math.Max(0, first); w <= Math.Min(said.Words.Count - 1, last); w++) if (Is(said.Words[w])) count++;
        return count;
    }
}
