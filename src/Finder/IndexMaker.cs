using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Finder;

/// <summary>Works the index out from the texts: encodes the examples, weighs them, and grows the trees that read facts and choose among subjects.</summary>
internal sealed class IndexMaker
{
    /// <summary>How far an example of each origin may be in doubt.</summary>
    private const float AskedDoubt = 0.7f, PlayDoubt = 0.7f, SheetDoubt = 1;
    private const int Folds = 3, SampleStep = 24;

    private readonly Func<Utterance, Meaning> encode;
    private readonly Synonyms synonyms;
    private readonly IReadOnlyList<Sheet> sheets;
    private readonly List<Example> examples;
    private Question[] questions = [];
    private SubjectIndex index = null!;

    public IndexMaker(Codebook book, IReadOnlyList<Sheet> sheets, Material material, Synonyms synonyms, Func<Utterance, Meaning> encode)
    {
        (this.encode, this.sheets, this.synonyms) = (encode, sheets, synonyms);
        examples = Examples.Gather(book, sheets, material, synonyms);
    }

    public SubjectIndex Make()
    {
        foreach (var example in examples) example.Meaning = encode(example.Said);
        var terms = new TermBook([.. examples.Select(e => e.Said)]);
        var near = new NearWords([.. examples.Select(e => (e.Said, e.Meaning))]);
        questions = new Question[examples.Count];
        Parallel.For(0, questions.Length, i => questions[i] = Question.Of(examples[i].Said, examples[i].Meaning, terms, near));
        var likeness = new Likeness(questions, terms.Count, near.Count);
        var table = new float[examples.Count][];
        Parallel.For(0, table.Length, i =>
        {
            var which = Enumerable.Range(0, i + 1);
            table[i] = Likeness.Together(likeness.Ways(questions[i], which), which)[..(i + 1)];
            table[i][i] += examples[i].Origin switch { Origin.Asked => AskedDoubt, Origin.Play => PlayDoubt, _ => SheetDoubt };
        });
        var (weights, leftOut) = Ridge.Solve(table, [.. examples.Select(e => e.Subject)], sheets.Count);
        index = new() { Sheets = sheets, Terms = terms, Near = near, Likeness = likeness, Examples = examples, Weights = weights, Facts = FactsOf(terms) };
        Calibrate();
        MeasureSubjects(leftOut);
        GrowFacts();
        return index;
    }

    private FactBook FactsOf(TermBook terms)
    {
        var asked = sheets.Select(_ => new List<Span>()).ToArray();
        for (var e = 0; e < examples.Count; e++)
            if (examples[e].Origin == Origin.Asked) asked[examples[e].Subject].AddRange(FactBook.Of(e, examples[e], sheets[examples[e].Subject].Facts, terms));
        var named = sheets.Select((sheet, s) => FactBook.Phrases(sheet).Select(p =>
        {
            var said = synonyms.Hear(p.Phrase);
            if (said.Words.Count == 0) return null;
            var meaning = encode(said);
            var direction = new float[Encoder.Size];
            meaning.Window(0, said.Words.Count - 1, direction);
            return new Span(s, p.Fact, p.Value, -1, direction, said.Words.Count, terms.Of(said), Denial.Count(said, 0, said.Words.Count - 1) > 0);
        }).OfType<Span>().ToArray()).ToArray();
        return new() { Facts = [.. sheets.Select(s => s.Facts)], Asked = [.. asked.Select(a => a.ToArray())], Named = named };
    }

    /// <summary>How like each span questions are that do not say it: some of all subjects, and those of its own.</summary>
    private void Calibrate()
    {
        var sample = Enumerable.Range(0, examples.Count).Where(e => examples[e].Origin == Origin.Asked).Where((_, i) => i % SampleStep == 0).ToList();
        Parallel.For(0, sheets.Count, s =>
        {
            var own = index.OfSubject[s].Where(e => examples[e].Origin == Origin.Asked).ToList();
            foreach (var span in index.Facts.Asked[s].Concat(index.Facts.Named[s]))
            {
                var likes = sample.Concat(own).Where(e => e != span.Example && !(examples[e].Subject == s && (examples[e].Facts[span.Fact] >> span.Value & 1) != 0))
                    .Select(e => questions[e].BestWindow(span.Direction, span.Words).Likeness).ToList();
                span.Usual = likes.Average();
                span.Spread = MathF.Max(0.03f, MathF.Sqrt(likes.Sum(l => (l - span.Usual) * (l - span.Usual)) / likes.Count));
            }
        });
    }

    private void GrowFacts()
    {
        var asked = Enumerable.Range(0, examples.Count).Where(e => examples[e].Origin == Origin.Asked).ToArray();
        var evidence = new FactEvidence[asked.Length];
        Parallel.For(0, asked.Length, i =>
        {
            var e = asked[i];
            var which = index.OfSubject[examples[e].Subject];
            evidence[i] = index.Evidence(questions[e], examples[e].Subject, Likeness.Together(index.Likeness.Ways(questions[e], which), which), e);
        });
        var (rows, so, fold) = (new List<float[]>(), new List<bool>(), new List<int>());
        for (var i = 0; i < asked.Length; i++)
            for (var f = 0; f < evidence[i].Rows.Length; f++)
                for (var v = 0; v < evidence[i].Rows[f].Length; v++)
                {
                    // of a value nobody else speaks of, leaving this question out would itself tell that it is stated
                    if (!evidence[i].Told[f][v]) continue;
                    rows.Add(evidence[i].Rows[f][v]);
                    so.Add((examples[asked[i]].Facts[f] >> v & 1) != 0);
                    fold.Add(i % Folds);
                }
        Trees Grow(int but) => Trees.Grow([.. rows.Where((_, r) => fold[r] != but)], [.. so.Where((_, r) => fold[r] != but)], 160, 5, 0.08, 12);
        var trees = Enumerable.Range(0, Folds).Select(Grow).ToArray();
        index.FactTrees = Grow(-1);
        Measure(asked, evidence, trees);
    }

    private void Measure(int[] asked, FactEvidence[] evidence, Trees[] trees)
    {
        var stated = 0;
        var filled = new List<(float Chance, bool Right)>();
        for (var i = 0; i < asked.Length; i++)
        {
            var chances = SubjectIndex.Chances(evidence[i], trees[i % Folds]);
            for (var f = 0; f < chances.Length; f++)
            {
                var bits = examples[asked[i]].Facts[f];
                if (bits != 0) stated++;
                var best = Enumerable.Range(0, chances[f].Length).MaxBy(v => evidence[i].Told[f][v] ? chances[f][v] : 0);
                filled.Add((chances[f][best], (bits >> best & 1) != 0));
            }
        }
        foreach (var floor in new[] { 0.4f, 0.5f, 0.55f, 0.6f, 0.65f, 0.7f, 0.75f, 0.8f, 0.85f, 0.9f })
        {
            var over = filled.Where(c => c.Chance >= floor).ToList();
            index.Figures += $"facts at {floor:f2}: filled {100.0 * over.Count(o => o.Right) / stated:f1} right {100.0 * over.Count(o => o.Right) / Math.Max(1, over.Count):f1}\n";
        }
    }

    private void MeasureSubjects(float[][] leftOut)
    {
        foreach (var origin in new[] { Origin.Asked, Origin.Play })
        {
            var ranks = Enumerable.Range(0, examples.Count).Where(e => examples[e].Origin == origin).Select(e => leftOut[e].Count(s => s > leftOut[e][examples[e].Subject])).ToList();
            index.Figures += $"{origin}, each left out in turn: first {100.0 * ranks.Count(r => r == 0) / ranks.Count:f1} %, among three {100.0 * ranks.Count(r => r < 3) / ranks.Count:f1} %\n";
        }
    }
}
