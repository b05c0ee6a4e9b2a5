using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Finder;

/// <summary>
/// Goes from a question in plain words to the subject it is about and the facts the words state. What it knows is worked out once from the
/// texts and kept in a file; it can rule nothing and says nothing of its own.
/// </summary>
public sealed class SubjectFinder
{
    /// <summary>Below this no subject is claimed. Chosen on the asked questions, each left out in turn, and on talk of other things.</summary>
    private const float Floor = 0.055f;
    private const float Sharpness = 25;

    private readonly Codebook book;
    private readonly Synonyms synonyms;
    private readonly SubjectIndex index;
    private readonly Encoder encoder;

    private SubjectFinder(Codebook book, Synonyms synonyms, SubjectIndex index, Encoder encoder) => (this.book, this.synonyms, this.index, this.encoder) = (book, synonyms, index, encoder);

    /// <summary>What was measured when the index was made: each question left out in turn.</summary>
    public string Figures => index.Figures;

    /// <summary>Takes the index from the file when it was made from these very texts; otherwise makes it, says so, and leaves it there.</summary>
    /// <param name="cache">Where the index is kept; null keeps none.</param>
    /// <param name="tell">Hears that the index is being made.</param>
    public static SubjectFinder Open(Codebook book, Material material, string? cache, Action<string>? tell = null)
    {
        IReadOnlyList<Sheet> sheets = [.. book.Sheets.OrderBy(s => s.Name, StringComparer.Ordinal)];
        var synonyms = Synonyms.Read(material.Synonyms.File, material.Synonyms.Text, []);
        var encoder = new Encoder();
        var key = material.Key();
        if (cache is not null && Kept(cache, sheets, key) is { } kept) return new(book, synonyms, kept, encoder);
        // whoever comes while another learns waits for it, and then finds it learned
        using var turn = cache is null ? null : Turn(cache);
        if (cache is not null && Kept(cache, sheets, key) is { } learned) return new(book, synonyms, learned, encoder);
        tell?.Invoke("the questions have changed or were never learned; learning them takes a minute or two, once");
        using var made = new MemoryStream();
        IndexFile.Write(made, new IndexMaker(book, sheets, material, synonyms, encoder.Of).Make(), key);
        made.Position = 0;
        if (cache is not null) Keep(made, cache);
        // read back even now, so that the first answer is to the letter that of every later one
        return new(book, synonyms, IndexFile.Read(made, sheets, key)!, encoder);
    }

    private static SubjectIndex? Kept(string cache, IReadOnlyList<Sheet> sheets, string key)
    {
        if (!File.Exists(cache)) return null;
        using var file = new BufferedStream(File.OpenRead(cache), 1 << 20);
        return IndexFile.Read(file, sheets, key);
    }

    private static FileStream Turn(string cache)
    {
        if (Path.GetDirectoryName(Path.GetFullPath(cache)) is { } folder) Directory.CreateDirectory(folder);
        while (true)
        {
            try { return new FileStream(cache + ".lock", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None); }
            catch (IOException) { Thread.Sleep(500); }
        }
    }

    /// <summary>Written beside and then moved, so that nobody finds half a file.</summary>
    private static void Keep(MemoryStream made, string cache)
    {
        var beside = $"{cache}.{Environment.ProcessId}";
        using (var file = File.Create(beside)) made.WriteTo(file);
        File.Move(beside, cache, true);
    }

    /// <summary>The best subjects for a question. A game named by the caller or by the words rules out the subjects of the other game.</summary>
    public Finds Find(string words, int most = 3, string? game = null)
    {
        var said = synonyms.Hear(words);
        if (said.Words.Count == 0) return new(false, []);
        var question = index.Hear(said, encoder);
        var likeness = Likeness.Together(index.Likeness.Ways(question));
        var score = index.Score(likeness);
        game ??= Named(said);
        var top = SubjectIndex.Top(score, Math.Max(1, most), s => game is null || index.Sheets[s].Speaks(game));
        if (top.Length == 0) return new(false, []);
        var best = score[top[0]];
        var all = score.Sum(s => Math.Exp(Sharpness * (s - best)));
        var fits = best >= Floor;
        return new(fits, [.. top.Select(s => new Found(
            index.Sheets[s].Name, index.Sheets[s].About, Math.Round(Math.Exp(Sharpness * (score[s] - best)) / all, 3), fits ? FactReader.Read(index, question, s, likeness, book) : []))]);
    }

    /// <summary>The facts the words state, when the subject is known.</summary>
    public IReadOnlyList<ReadFact> Read(string words, string sheet)
    {
        var said = synonyms.Hear(words);
        var at = index.Sheets.ToList().FindIndex(s => Words.Same(s.Name, sheet));
        if (said.Words.Count == 0 || at < 0) return [];
        var question = index.Hear(said, encoder);
        return FactReader.Read(index, question, at, Likeness.Together(index.Likeness.Ways(question, index.OfSubject[at])), book);
    }

    /// <summary>The one game the words name; null when they name none or both.</summary>
    private string? Named(Utterance said)
    {
        var named = book.Roster.Games.Where(g => said.Words.Any(w => Words.Same(w.Said, g))).ToList();
        return named.Count == 1 ? named[0] : null;
    }
}
