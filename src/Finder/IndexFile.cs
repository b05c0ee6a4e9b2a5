using Umpirage.Rules.Codes;

namespace Umpirage.Finder;

/// <summary>The index as it lies in a file. A file made from other texts, or by another version, is as good as none.</summary>
internal static class IndexFile
{
    private const string Version = "finder 1";

    public static void Write(Stream stream, SubjectIndex index, string key)
    {
        using var to = new BinaryWriter(stream, System.Text.Encoding.UTF8, true);
        to.Write(Version);
        to.Write(key);
        index.Terms.Write(to);
        index.Near.Write(to);
        index.Likeness.Write(to, index.Terms.Count, index.Near.Count);
        foreach (var example in index.Examples)
        {
            to.Write(example.Subject);
            to.Write((byte)example.Origin);
            to.Write((byte)example.Facts.Length);
            foreach (var bits in example.Facts) to.Write(bits);
        }
        foreach (var weights in index.Weights) Stored.WriteHalves(to, weights);
        WriteSpans(to, index.Facts.Asked);
        WriteSpans(to, index.Facts.Named);
        index.FactTrees.Write(to);
        to.Write(index.Figures);
        to.Write(Version);
    }

    /// <summary>Null when the file is of other texts, of another version, or broken off.</summary>
    public static SubjectIndex? Read(Stream stream, IReadOnlyList<Sheet> sheets, string key)
    {
        using var from = new BinaryReader(stream, System.Text.Encoding.UTF8, true);
        try
        {
            if (from.ReadString() != Version || from.ReadString() != key) return null;
            var (terms, near, likeness) = (TermBook.Read(from), NearWords.Read(from), Likeness.Read(from));
            var examples = new Example[likeness.Count];
            for (var e = 0; e < examples.Length; e++)
            {
                var (subject, origin, facts) = (from.ReadInt32(), (Origin)from.ReadByte(), new ulong[from.ReadByte()]);
                for (var f = 0; f < facts.Length; f++) facts[f] = from.ReadUInt64();
                examples[e] = new(subject, origin, Utterance.Empty, facts);
            }
            var weights = new float[examples.Length][];
            for (var e = 0; e < weights.Length; e++) weights[e] = Stored.ReadHalves(from, sheets.Count);
            var (asked, named, trees, figures) = (ReadSpans(from), ReadSpans(from), Trees.Read(from), from.ReadString());
            if (from.ReadString() != Version) return null;
            return new()
            {
                Sheets = sheets, Terms = terms, Near = near, Likeness = likeness, Examples = examples, Weights = weights,
                Facts = new() { Facts = [.. sheets.Select(s => s.Facts)], Asked = asked, Named = named }, FactTrees = trees, Figures = figures,
            };
        }
        catch (Exception broken) when (broken is EndOfStreamException or FormatException or ArgumentException or OverflowException or IndexOutOfRangeException)
        {
            return null;
        }
    }

    private static void WriteSpans(BinaryWriter to, Span[][] all)
    {
        to.Write(all.Length);
        foreach (var spans in all)
        {
            to.Write(spans.Length);
            foreach (var span in spans)
            {
                to.Write(span.Subject);
                to.Write((byte)span.Fact);
                to.Write((byte)span.Value);
                to.Write(span.Example);
                Stored.WriteHalves(to, span.Direction);
                to.Write((byte)Math.Min(span.Words, 255));
                Stored.WriteInts(to, span.Terms.Terms);
                Stored.WriteHalves(to, span.Terms.Weights);
                to.Write(span.Denies);
                to.Write(span.Usual);
                to.Write(span.Spread);
            }
        }
    }

    private static Span[][] ReadSpans(BinaryReader from)
    {
        var all = new Span[from.ReadInt32()][];
        for (var s = 0; s < all.Length; s++)
        {
            all[s] = new Span[from.ReadInt32()];
            for (var i = 0; i < all[s].Length; i++)
            {
                var (subject, fact, value, example) = (from.ReadInt32(), from.ReadByte(), from.ReadByte(), from.ReadInt32());
                var direction = Stored.ReadHalves(from, Encoder.Size);
                var words = from.ReadByte();
                var terms = Stored.ReadInts(from);
                all[s][i] = new(subject, fact, value, example, direction, words, new(terms, Stored.ReadHalves(from, terms.Length)), from.ReadBoolean()) { Usual = from.ReadSingle(), Spread = from.ReadSingle() };
            }
        }
        return all;
    }
}
