using System.Reflection;

namespace Umpirage.Finder;

/// <summary>Cuts words into the pieces the sentence model knows, longest piece first.</summary>
internal sealed class WordPieces
{
    public const int Start = 101, End = 102, Unknown = 100;

    private readonly Dictionary<string, int> vocabulary = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int[]> known = new(StringComparer.Ordinal);

    public WordPieces(Assembly model)
    {
        using var lines = new StreamReader(Resource(model, "vocab.txt"));
        for (var i = 0; lines.ReadLine() is { } piece; i++) vocabulary[piece] = i;
    }

    public static Stream Resource(Assembly model, string end) =>
        model.GetManifestResourceStream(model.GetManifestResourceNames().First(n => n.EndsWith(end, StringComparison.Ordinal)))!;

    public int[] Of(string word)
    {
        word = word.ToLowerInvariant();
        if (known.TryGetValue(word, out var seen)) return seen;
        var pieces = new List<int>();
        for (var at = 0; at < word.Length;)
        {
            if (word[at] == ' ') { at++; continue; }
            var end = at + 1;
            if (char.IsLetterOrDigit(word[at])) while (end < word.Length && char.IsLetterOrDigit(word[end])) end++;
            Cut(word[at..end], pieces);
            at = end;
        }
        return known[word] = [.. pieces];
    }

    private void Cut(string run, List<int> pieces)
    {
        var before = pieces.Count;
        for (var at = 0; at < run.Length;)
        {
            var end = run.Length;
            var found = -1;
            for (; end > at; end--)
                if (vocabulary.TryGetValue((at > 0 ? "##" : "") + run[at..end], out found)) break;
            if (end == at) { pieces.RemoveRange(before, pieces.Count - before); pieces.Add(Unknown); return; }
            pieces.Add(found);
            at = end;
        }
    }
}
