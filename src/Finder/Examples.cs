using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Finder;

/// <summary>Gathers everything that is said of the given subjects: asked questions, situations of plays with what is known of their facts, and the sheets' own sentences.</summary>
internal static class Examples
{
    public static List<Example> Gather(Codebook book, IReadOnlyList<Sheet> sheets, Material material, Synonyms synonyms)
    {
        var faults = new List<Finding>();
        var place = sheets.Select((s, i) => (s.Name, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.OrdinalIgnoreCase);
        var all = new List<Example>();
        foreach (var text in material.Asked)
            foreach (var question in AskedReader.Read(text.File, text.Text, book.Sheet, [.. sheets.Select(s => s.Name)], faults))
            {
                if (!place.TryGetValue(question.Sheet, out var at)) continue;
                var said = synonyms.Hear(question.Text);
                if (said.Words.Count > 0) all.Add(new(at, Origin.Asked, said, Stated(sheets[at], question)) { Asked = question });
            }
        var today = DateOnly.MaxValue;
        foreach (var text in material.Plays)
        {
            var play = PlayReader.Read(text.File, text.Text, faults);
            if (!place.TryGetValue(play.Sheet, out var at) || synonyms.Hear(play.Situation) is not { Words.Count: > 0 } said) continue;
            all.Add(new(at, Origin.Play, said, Known(book, sheets[at], play, today)));
        }
        for (var at = 0; at < sheets.Count; at++)
            foreach (var sentence in Sentences(sheets[at])) all.Add(new(at, Origin.Sheet, synonyms.Hear(sentence), new ulong[sheets[at].Facts.Count]));
        return all;
    }

    private static ulong[] Stated(Sheet sheet, AskedQuestion question)
    {
        var facts = new ulong[sheet.Facts.Count];
        for (var f = 0; f < facts.Length; f++)
            foreach (var stated in question.Facts.Where(s => s.Fact == sheet.Facts[f].Name))
                facts[f] = 1UL << sheet.Facts[f].Values.ToList().IndexOf(stated.Value);
        return facts;
    }

    /// <summary>What a play narrows its facts to; nothing for a fact it leaves open.</summary>
    public static ulong[] Known(Codebook book, Sheet sheet, Play play, DateOnly today)
    {
        var facts = new ulong[sheet.Facts.Count];
        var findings = new List<Finding>();
        if (Casebook.Code(book, play.Code, today, _ => { }) is not { } code || book.Bind(sheet, code.Stack, findings) is not { } bound || CodeSheet.Of(bound, code, findings) is not { } under) return facts;
        var situation = Timeline.Tell(Situation.Read(under, play.File, play.Given, findings), play.File, play.Happened, findings);
        for (var f = 0; f < facts.Length; f++)
        {
            var term = bound.Find(sheet.Facts[f].Name)!;
            if (situation.IsKnown(term.Index)) facts[f] = situation.Known[term.Index];
        }
        return facts;
    }

    private static IEnumerable<string> Sentences(Sheet sheet)
    {
        yield return $"{sheet.Name}. {sheet.About}";
        foreach (var fact in sheet.Facts) yield return $"{fact.Question} {string.Join(", ", fact.Values)}";
        foreach (var rule in sheet.Rules) yield return string.Join("; ", rule.Exceptions.Select(e => e.Title).Prepend(rule.Title));
    }
}
