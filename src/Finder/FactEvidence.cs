using Umpirage.Rules.Codes;

namespace Umpirage.Finder;

/// <summary>What speaks for each value of each fact of one subject in a question: one row of features a value, and the words it rests on.</summary>
internal sealed class FactEvidence
{
    public const int Features = 33;

    private readonly FactBook book;
    private readonly Question question;
    private readonly int subject, but;
    private readonly IReadOnlyList<Term> facts;

    public float[][][] Rows { get; }
    public (int First, int Last)[][] Windows { get; }
    /// <summary>Whether any asked question says the value.</summary>
    public bool[][] Told { get; }
    /// <summary>The best likeness of any span of the subject, above what is usual for it.</summary>
    public float Best { get; private set; }

    /// <param name="but">An example to be left out, or -1.</param>
    public FactEvidence(FactBook book, Question question, int subject, IReadOnlyList<Example> examples, float[] likeness, IReadOnlyList<int> ofSubject, int but, TermBook terms)
    {
        (this.book, this.question, this.subject, this.but) = (book, question, subject, but);
        facts = book.Facts[subject];
        Rows = [.. facts.Select(f => f.Values.Select(_ => new float[Features]).ToArray())];
        Told = [.. facts.Select(f => new bool[f.Values.Count])];
        Windows = [.. facts.Select(f => new (int, int)[f.Values.Count])];
        Spans(terms);
        Sure();
        Votes(examples, likeness, ofSubject);
        Against();
    }

    private void Spans(TermBook terms)
    {
        var bestOfFact = new float[facts.Count];
        var mine = book.Asked[subject].Where(s => s.Example != but).ToList();
        foreach (var rows in Rows) foreach (var row in rows) row[15] = -3;
        foreach (var span in mine)
        {
            var row = Rows[span.Fact][span.Value];
            var (like, first, last) = question.BestWindow(span.Direction, span.Words);
            var above = (like - span.Usual) / span.Spread;
            if (like > row[0]) (row[1], row[0]) = (row[0], like);
            else if (like > row[1]) row[1] = like;
            Told[span.Fact][span.Value] = true;
            var cover = Cover(span.Terms, 0, question.Words - 1, terms);
            row[4] = Math.Max(row[4], cover);
            if (above > row[15])
            {
                row[15] = above;
                row[6] = Cover(span.Terms, first - 2, last + 2, terms);
                row[23] = Math.Sign(Denial.Count(question.Said, first - 1, last + 1)) - (span.Denies ? 1 : 0);
                row[24] = Denial.Count(question.Said, first - 3, last + 3);
                row[27] = 0;
                for (var w = first; w <= last; w++) row[27] += question.Telling[w];
                row[31] = like;
                Windows[span.Fact][span.Value] = (first, last);
            }
            bestOfFact[span.Fact] = Math.Max(bestOfFact[span.Fact], above);
            Best = Math.Max(Best, above);
        }
        foreach (var span in book.Named[subject])
        {
            var row = Rows[span.Fact][span.Value];
            var (like, first, last) = question.BestWindow(span.Direction, span.Words);
            var above = (like - span.Usual) / span.Spread;
            if (above > row[7] || row[7] == 0)
            {
                row[7] = above;
                if (!Told[span.Fact][span.Value]) Windows[span.Fact][span.Value] = (first, last);
            }
            row[9] = Math.Max(row[9], Cover(span.Terms, 0, question.Words - 1, terms));
        }
        for (var f = 0; f < facts.Count; f++)
            for (var v = 0; v < facts[f].Values.Count; v++)
            {
                var row = Rows[f][v];
                foreach (var span in book.Kin(subject, f, v))
                {
                    if (span.Example == but) continue;
                    var (like, first, last) = question.BestWindow(span.Direction, span.Words);
                    var above = (like - span.Usual) / span.Spread;
                    if (above > row[11])
                    {
                        row[11] = above;
                        if (above > row[15]) Windows[f][v] = (first, last);
                    }
                    row[12] = Math.Max(row[12], Cover(span.Terms, 0, question.Words - 1, terms));
                }
                row[30] = row[15] - Enumerable.Range(0, facts.Count).Where(o => o != f).Select(o => bestOfFact[o]).DefaultIfEmpty(0).Max();
            }
    }

    private void Sure()
    {
        for (var f = 0; f < facts.Count; f++)
            foreach (var sure in question.Said.Sure.Where(s => s.Fact == facts[f].Name))
            {
                var at = facts[f].Values.ToList().IndexOf(sure.Value);
                if (at < 0) continue;
                for (var v = 0; v < facts[f].Values.Count; v++) Rows[f][v][20] += v == at ? 1 : -1;
                Windows[f][at] = (sure.First, sure.Last);
                Told[f][at] = true;
            }
    }

    /// <summary>How much of what is telling in the span stands among these words of the question.</summary>
    private float Cover(Sparse span, int first, int last, TermBook terms)
    {
        if (span.Terms.Length == 0) return 0;
        var here = first <= 0 && last >= question.Words - 1 ? question.Terms : FactBook.TermsOf(question.Said, first, last, terms);
        var (sum, all, at) = (0f, 0f, 0);
        for (var t = 0; t < span.Terms.Length; t++)
        {
            var weight = span.Weights[t];
            all += weight;
            while (at < here.Terms.Length && here.Terms[at] < span.Terms[t]) at++;
            if (at < here.Terms.Length && here.Terms[at] == span.Terms[t]) sum += weight;
        }
        return sum / all;
    }

    /// <summary>What examples like the question say of the fact.</summary>
    private void Votes(IReadOnlyList<Example> examples, float[] likeness, IReadOnlyList<int> ofSubject)
    {
        foreach (var e in ofSubject)
        {
            var example = examples[e];
            if (e == but || example.Origin == Origin.Sheet) continue;
            var place = example.Origin == Origin.Asked ? 13 : 16;
            for (var f = 0; f < facts.Count; f++)
            {
                var bits = example.Facts[f];
                if (bits == 0) continue;
                for (var v = 0; v < facts[f].Values.Count; v++)
                {
                    var row = Rows[f][v];
                    if ((bits >> v & 1) == 0) { row[place + 1] = Math.Max(row[place + 1], likeness[e]); continue; }
                    if ((bits & (bits - 1)) != 0) continue;
                    row[place] = Math.Max(row[place], likeness[e]);
                    if (example.Origin == Origin.Play) row[18]++;
                }
            }
        }
        for (var f = 0; f < facts.Count; f++)
        {
            var played = Rows[f].Sum(r => r[18]);
            foreach (var row in Rows[f]) row[18] = (row[18] + 0.5f) / (played + 0.5f * facts[f].Values.Count);
        }
    }

    /// <summary>Each value against the others of its fact.</summary>
    private void Against()
    {
        for (var f = 0; f < facts.Count; f++)
            for (var v = 0; v < facts[f].Values.Count; v++)
            {
                var row = Rows[f][v];
                float Other(int feature)
                {
                    var most = -3f;
                    for (var o = 0; o < facts[f].Values.Count; o++) if (o != v) most = Math.Max(most, Rows[f][o][feature]);
                    return most;
                }
                row[2] = row[15] - Other(15);
                row[3] = row[0] - Other(0);
                row[5] = row[4] - Other(4);
                row[8] = row[7] - Other(7);
                row[10] = row[9] - Other(9);
                row[22] = facts[f].Values.Count;
                row[25] = facts[f].Usually == facts[f].Values[v] ? 1 : 0;
                row[26] = facts[f].Values[v] is "yes" ? 1 : facts[f].Values[v] is "no" or "none" or "nobody" or "nothing" ? 2 : 0;
                row[28] = question.Words;
                row[29] = Best;
                row[32] = row[11] - Other(11);
            }
    }
}
