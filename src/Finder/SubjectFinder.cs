using System.Numerics.Tensors;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Finder;

/// <summary>
/// Goes from a question in plain words to the subject it is about and the facts the words state. What it knows was learned from the texts and
/// lies beside them; it can rule nothing and says nothing of its own.
/// </summary>
public sealed class SubjectFinder
{
    /// <summary>For a folder of codes from which nothing was learned: likeness alone.</summary>
    private static readonly Floors Unlearned = new(0.1f, 1, 25, 0);

    private readonly Codebook book;
    private readonly Synonyms synonyms;
    private readonly Encoder encoder;
    private readonly Learned? learned;
    private readonly IReadOnlyList<Sheet> sheets, fresh;
    private readonly IReadOnlyList<NewSubject> later;
    private readonly float[] middle;

    private SubjectFinder(Codebook book, Synonyms synonyms, Encoder encoder, Learned? learned, IReadOnlyList<Sheet> sheets, IReadOnlyList<Sheet> fresh, IReadOnlyList<NewSubject> later)
    {
        (this.book, this.synonyms, this.encoder, this.learned, this.sheets, this.fresh, this.later) = (book, synonyms, encoder, learned, sheets, fresh, later);
        middle = learned?.Middle ?? [.. Enumerable.Range(0, Encoder.Size).Select(i => later.Average(d => d.Direction[i]))];
    }

    /// <summary>What was measured when it was learned, on questions held out; and what has changed since.</summary>
    public string Figures { get; private init; } = "";

    /// <summary>
    /// Takes what was learned from beside the texts. Subjects that came later are looked at now, which is kept in the cache and good until a
    /// text changes.
    /// </summary>
    /// <param name="cache">Where what later subjects are like is kept; null keeps nothing.</param>
    /// <param name="tell">Hears that later subjects are being looked at.</param>
    public static SubjectFinder Open(Codebook book, Material material, string? cache, Action<string>? tell = null)
    {
        IReadOnlyList<Sheet> sheets = [.. book.Sheets.OrderBy(s => s.Name, StringComparer.Ordinal)];
        var synonyms = Synonyms.Read(material.Synonyms.File, material.Synonyms.Text, []);
        Learned? learned = null;
        if (material.Weights is { } path && File.Exists(path)) using (var file = new BufferedStream(File.OpenRead(path), 1 << 20)) learned = LearnedFile.Read(file);
        var known = learned?.Subjects.Select(s => s.Name).ToHashSet(StringComparer.OrdinalIgnoreCase) ?? [];
        IReadOnlyList<Sheet> fresh = [.. sheets.Where(s => !known.Contains(s.Name))];
        var encoder = new Encoder(learned?.Changes ?? []);
        IReadOnlyList<NewSubject> later = fresh.Count == 0 ? [] : Later(book, fresh, material, synonyms, encoder, learned, cache, tell);
        var changed = learned is not null && learned.Key != material.ForLearning().Key() ? "the texts have changed since; tools/Tune learns them anew\n" : "";
        var added = fresh.Count > 0 ? $"found by likeness alone: {string.Join(", ", fresh.Take(5).Select(s => s.Name))}{(fresh.Count > 5 ? $" and {fresh.Count - 5} more" : "")}\n" : "";
        return new(book, synonyms, encoder, learned, sheets, fresh, later) { Figures = learned?.Figures + changed + added };
    }

    private static IReadOnlyList<NewSubject> Later(Codebook book, IReadOnlyList<Sheet> fresh, Material material, Synonyms synonyms, Encoder encoder, Learned? learned, string? cache, Action<string>? tell)
    {
        var key = $"{material.Key()} {learned?.Key} {learned?.Figures.Length}";
        if (Kept(cache, key) is { } kept) return kept;
        // whoever comes while another learns waits for it, and then finds it learned
        using var turn = cache is null ? null : Turn(cache);
        if (Kept(cache, key) is { } made) return made;
        tell?.Invoke($"{fresh.Count} subjects are new to the finder; looking at what is said of them, once");
        using var file = new MemoryStream();
        NewSubjects.Write(file, NewSubjects.Of(Examples.Gather(book, fresh, material, synonyms), fresh.Count, encoder.Of), key);
        if (cache is not null) Keep(file, cache);
        file.Position = 0;
        // read back even now, so that the first answer is to the letter that of every later one
        return NewSubjects.Read(file, key)!;
    }

    private static NewSubject[]? Kept(string? cache, string key)
    {
        if (!File.Exists(cache)) return null;
        using var file = File.OpenRead(cache);
        return NewSubjects.Read(file, key);
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
        var meaning = encoder.Of(said);
        game ??= Named(said);
        var may = sheets.Where(s => game is null || s.Speaks(game)).ToList();
        if (may.Count == 0) return new(false, []);
        var floors = learned?.Floors ?? Unlearned;
        var scores = Scores(said, meaning);
        var nothing = scores.GetValueOrDefault("", float.NegativeInfinity);
        var shares = may.Select(s => scores[s.Name]).Append(nothing).ToArray();
        TensorPrimitives.SoftMax<float>(shares, shares);
        var top = Enumerable.Range(0, may.Count).OrderByDescending(s => shares[s]).ThenBy(s => s).Take(Math.Max(1, most)).ToList();
        var fits = shares[top[0]] >= floors.Fit;
        return new(fits, [.. top.Select(s => new Found(may[s].Name, may[s].About, Math.Round(shares[s], 3), fits ? Facts(said, meaning, may[s]) : []))]);
    }

    /// <summary>The facts the words state, when the subject is known.</summary>
    public IReadOnlyList<ReadFact> Read(string words, string sheet)
    {
        var said = synonyms.Hear(words);
        return said.Words.Count > 0 && sheets.FirstOrDefault(s => Words.Same(s.Name, sheet)) is { } found ? Facts(said, encoder.Of(said), found) : [];
    }

    private IReadOnlyList<ReadFact> Facts(Utterance said, Meaning meaning, Sheet sheet)
    {
        var labels = learned?.Subjects.FirstOrDefault(s => Words.Same(s.Name, sheet.Name))?.Labels ?? [];
        return FactReader.Read(book, sheet, said, learned?.Facts.Read(meaning, labels) ?? [], (learned?.Floors ?? Unlearned).Fact);
    }

    /// <summary>What the words and their meaning say for each subject, by name; under no name for talk of other things.</summary>
    private Dictionary<string, float> Scores(Utterance said, Meaning meaning)
    {
        var scores = new Dictionary<string, float>(StringComparer.OrdinalIgnoreCase);
        if (learned is not null) foreach (var (subject, score) in learned.Subjects.Zip(learned.Scores(said, meaning))) scores[subject.Name] = score;
        var (floors, common) = (learned?.Floors ?? Unlearned, TensorPrimitives.Dot<float>(meaning.Whole, middle));
        for (var f = 0; f < fresh.Count; f++)
        {
            var like = TensorPrimitives.Dot<float>(meaning.Whole, later[f].Direction);
            // without anything learned there is only likeness; beside what was learned a newcomer has to be clearly meant
            scores[fresh[f].Name] = learned is null || like >= later[f].Floor ? floors.Start + floors.Pull * (like - common) : float.NegativeInfinity;
        }
        return scores;
    }

    /// <summary>The one game the words name; null when they name none or both.</summary>
    private string? Named(Utterance said)
    {
        var named = book.Roster.Games.Where(g => said.Words.Any(w => Words.Same(w.Said, g))).ToList();
        return named.Count == 1 ? named[0] : null;
    }
}
