using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Finder;

/// <summary>
/// The trade's synonyms. A line "long form = short form, ..." has the short forms read as the long one; "word ~ word, ..." makes words kin;
/// "fact is value : words, ..." names words that say a fact wherever a subject has it.
/// </summary>
public sealed class Synonyms
{
    private const int LongestForm = 7;

    private readonly Dictionary<string, string> meant = [];
    private readonly Dictionary<string, List<string>> kin = [];
    private readonly Dictionary<string, (string Fact, string Value)> sure = [];

    private Synonyms() { }

    /// <summary>Reads a list; a line that is no group, or gives one short form two meanings, is a finding.</summary>
    public static Synonyms Read(string file, string text, List<Finding> findings)
    {
        var read = new Synonyms();
        foreach (var line in SourceLine.Of(text))
        {
            void Fault(FindingKind kind, string message) => findings.Add(new(kind, file, line.Number, message));
            var cut = line.Text.IndexOfAny(['=', '~', ':']);
            var forms = cut < 0 ? [] : line.Text[(cut + 1)..].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            if (cut <= 0 || forms.Length == 0)
            {
                Fault(FindingKind.UnreadableLine, $"cannot read '{line.Short}'; write 'long form = short form, short form', 'word ~ word, word' or 'fact is value : words, words'");
                continue;
            }
            var head = line.Text[..cut].Trim();
            if (line.Text[cut] == ':')
            {
                if (head.Split(" is ") is not [var fact, var value]) Fault(FindingKind.UnreadableLine, $"'{head}' is no fact with its value; write 'fact is value : words, words'");
                else foreach (var form in forms) read.sure[form] = (fact, value);
                continue;
            }
            foreach (var form in line.Text[cut] == '=' ? forms : forms.Prepend(head))
            {
                var key = Key(form);
                if (line.Text[cut] == '~') { if (!kinOf(read, key).Contains(head)) read.kin[key].Add(head); continue; }
                if (!read.meant.TryAdd(key, head) && read.meant[key] != head) Fault(FindingKind.ImpossibleValue, $"'{form}' is already short for '{read.meant[key]}'");
            }
        }
        return read;

        static List<string> kinOf(Synonyms s, string key) => s.kin.TryGetValue(key, out var list) ? list : s.kin[key] = [];
    }

    /// <summary>A form of capitals alone is kept so; of others the case does not count. Punctuation inside a form counts as a gap.</summary>
    private static string Key(string form)
    {
        var parts = Split(form).Select(p => form[p.Start..p.End]);
        var key = string.Join(' ', parts);
        return key.Any(char.IsLetter) && !key.Any(char.IsLower) && !key.Any(char.IsDigit) ? key : key.ToLowerInvariant();
    }

    /// <summary>Takes a text apart, reading short forms as their long forms and noting the groups its words belong to.</summary>
    public Utterance Hear(string raw)
    {
        var text = Words.Tidy(raw);
        var parts = Split(text);
        var words = new List<Heard>();
        var terms = new List<(string, int)>();
        for (var at = 0; at < parts.Count;)
        {
            var (found, taken) = ("", 1);
            for (var n = Math.Min(LongestForm, parts.Count - at); n > 0 && found == ""; n--)
                if (Find(meant, text, parts, at, n) is { } longer) (found, taken) = (longer, n);
            var (start, end) = (parts[at].Start, parts[at + taken - 1].End);
            var said = text[start..end];
            var plain = said.EndsWith("'s", StringComparison.OrdinalIgnoreCase) ? said[..^2] : said;
            if (found == "" && taken == 1 && plain != said && Lookup(meant, plain) is { } owner) found = owner + "'s";
            words.Add(new(said, found == "" ? said.ToLowerInvariant() : found, start, end, parts[at].Part));
            at += taken;
        }
        for (var w = 0; w < words.Count; w++)
            foreach (var piece in Split(words[w].Meant))
                terms.Add((Stem.Of(words[w].Meant[piece.Start..piece.End].ToLowerInvariant()), w));
        for (var w = 0; w < words.Count; w++)
        {
            var run = "";
            for (var n = 0; n < 4 && w + n < words.Count; n++)
            {
                run = n == 0 ? Key(words[w].Said) : run + " " + Key(words[w + n].Said);
                if (kin.TryGetValue(run.ToLowerInvariant(), out var groups)) foreach (var group in groups) terms.Add(("~" + group, w));
            }
        }
        return new(text, words, terms) { Sure = [.. SureIn(words)] };
    }

    /// <summary>The facts that are said in so many words, the longest words first.</summary>
    private IEnumerable<SureWords> SureIn(List<Heard> words)
    {
        var pieces = words.SelectMany((w, i) => w.Meant.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(p => (Piece: p.ToLowerInvariant(), Word: i))).ToList();
        for (var at = 0; at < pieces.Count;)
        {
            var taken = 1;
            for (var n = Math.Min(LongestForm, pieces.Count - at); n > 0; n--)
            {
                if (!sure.TryGetValue(string.Join(' ', pieces.Skip(at).Take(n).Select(p => p.Piece)), out var said)) continue;
                yield return new(said.Fact, said.Value, pieces[at].Word, pieces[at + n - 1].Word);
                taken = n;
                break;
            }
            at += taken;
        }
    }

    private static string? Find(Dictionary<string, string> forms, string text, List<(int Start, int End, int Part)> parts, int at, int n)
    {
        for (var i = 1; i < n; i++) if (parts[at + i].Part != parts[at].Part) return null;
        return Lookup(forms, string.Join(' ', parts.Skip(at).Take(n).Select(p => text[p.Start..p.End])));
    }

    private static string? Lookup(Dictionary<string, string> forms, string said) =>
        forms.TryGetValue(said, out var exact) ? exact : forms.GetValueOrDefault(said.ToLowerInvariant());

    /// <summary>Runs of letters, digits and inner apostrophes. A new part of the sentence begins after . , ; : ! ? and dashes set off by spaces.</summary>
    private static List<(int Start, int End, int Part)> Split(string text)
    {
        var runs = new List<(int, int, int)>();
        var part = 0;
        for (var i = 0; i < text.Length;)
        {
            if (!char.IsLetterOrDigit(text[i]))
            {
                if (text[i] is ';' or ':' or '!' or '?' || (text[i] is '.' or ',' && (i + 1 == text.Length || text[i + 1] == ' '))) part++;
                i++;
                continue;
            }
            var start = i;
            while (i < text.Length && (char.IsLetterOrDigit(text[i]) || (text[i] == '\'' && i + 1 < text.Length && char.IsLetter(text[i + 1])))) i++;
            runs.Add((start, i, part));
        }
        return runs;
    }
}
