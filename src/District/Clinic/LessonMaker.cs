using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>
/// Makes a lesson from the computed crossover. Every difference gets a place: the subjects asked about most a slide of their own with one drawn play, the
/// others a row of a table at the end of their group; as many slides of their own as the time allows.
/// </summary>
public static class LessonMaker
{
    /// <summary>Makes the lesson; null with the reasons when the audience is unknown or even tables alone take longer than the plan allows.</summary>
    /// <param name="asked">How often each subject is asked about; subjects not named count as 0.</param>
    public static Lesson? Of(Codebook book, PhraseBook phrases, LessonPlan plan, Code here, Code there, string audience, IReadOnlyDictionary<string, int> asked, InstructorFile edits, List<Finding> findings)
    {
        if (!plan.Audiences.TryGetValue(audience, out var groups))
        {
            findings.Add(new(FindingKind.UnknownWord, "lesson", 0, $"there is no audience '{audience}'; {Words.Offer(audience, [.. plan.Audiences.Keys])}"));
            return null;
        }
        var before = findings.Count;
        var differences = Crossover.Of(book, here, there, findings).Where(d => !d.Same && groups.Contains(d.Sheet.Group)).OrderBy(d => Place(groups, d.Sheet.Group)).ToList();
        var follows = new List<Follow>();
        List<Contrast> all = [.. differences.Where(d => d.Rulings.Count > 0).SelectMany(d => Contrasts(book, phrases, here, there, d, follows, findings))
            .GroupBy(c => c.Key).SelectMany(g => g.Select((c, i) => i == 0 ? c : c with { Key = $"{c.Key}-{i + 1}" }))];
        List<NumberRow> numbers = [.. differences.SelectMany(d => d.Values.Select(v => new NumberRow(d.Sheet.Name, v.Name, v.Here.Value, v.There.Value, v.Here.Citation.ToString(), v.There.Citation.ToString(), phrases.Caution(d.Sheet.Group))))];
        List<OnlyRow> only = [.. differences.Where(d => d.OnlyIn is not null).Select(d => new OnlyRow(d.Sheet.Name, d.Sheet.About, d.OnlyIn!))];
        if (findings.Count > before) return null;
        var wishes = edits.Wishes.ToDictionary(w => w.Key);
        List<Contrast> shown = [.. all.Where(c => wishes.GetValueOrDefault(c.Key)?.Show != "no")];
        // one play a subject, the plainest: the fewest facts, the most rulings turned
        var firsts = shown.GroupBy(c => c.Sheet).Select(g => g.OrderBy(c => c.Given.Count - 2 * c.Turns.Count).ThenBy(c => c.Key, StringComparer.Ordinal).First())
            .Where(c => wishes.GetValueOrDefault(c.Key)?.Show != "row").OrderByDescending(c => asked.GetValueOrDefault(c.Sheet)).ToList();
        List<Contrast> always = [.. shown.Where(c => wishes.GetValueOrDefault(c.Key)?.Show == "slide")];
        var (known, learnt) = Markup.Names(here, there);
        var title = $"{learnt} for those who know {known}";
        for (var own = firsts.Count; own >= 0; own--)
        {
            HashSet<string> pairs = [.. firsts.Take(own).Concat(always).Select(c => c.Key)];
            var slides = Slides(plan, groups, here, there, title, audience, shown, pairs, numbers, only, wishes);
            if (slides.Sum(s => s.Seconds) > plan["minutes"] * 60) continue;
            var quiz = firsts.Concat(shown.OrderByDescending(c => asked.GetValueOrDefault(c.Sheet))).DistinctBy(c => c.Key).Take(plan["questions"]).ToList();
            return new(here, there, audience, title, slides, all, numbers, only, follows, edits.Kept(all), edits.Stale(all), quiz);
        }
        findings.Add(new(FindingKind.ImpossibleValue, "lesson", 0, $"the differences do not fit in {plan["minutes"]} minutes even as tables; allow more minutes in codes/lessons/plan.txt or name a narrower audience"));
        return null;
    }

    private static int Place(IReadOnlyList<string> groups, string group)
    {
        for (var i = 0; i < groups.Count; i++) if (Words.Same(groups[i], group)) return i;
        return groups.Count;
    }

    private static IEnumerable<Contrast> Contrasts(Codebook book, PhraseBook phrases, Code here, Code there, SheetDifference difference, List<Follow> follows, List<Finding> findings) =>
        Bank.Table(book, difference.Sheet, here, findings) is { } one && Bank.Table(book, difference.Sheet, there, findings) is { } two ? new ContrastMaker(one, two, phrases).Of(difference.Rulings, follows) : [];

    private static List<Slide> Slides(
        LessonPlan plan, IReadOnlyList<string> groups, Code here, Code there, string title, string audience, List<Contrast> shown, HashSet<string> pairs, List<NumberRow> numbers, List<OnlyRow> only, Dictionary<string, Wish> wishes)
    {
        var slides = new List<Slide> { new("opening", SlideKind.Opening, $"A lesson for {audience}s", title, plan["seconds opening"], [], [], []) };
        var counted = Parts(numbers, plan["rows numbers"]);
        slides.AddRange(counted.Select((rows, i) => new Slide($"numbers {i + 1}", SlideKind.Numbers, "Numbers first", Counted("What is counted and measured", i, counted.Count), plan["seconds numbers"], [], rows, [])));
        foreach (var group in groups)
        {
            var mine = shown.Where(c => Words.Same(c.Group, group)).ToList();
            var named = plan.Groups[group];
            slides.AddRange(mine.Where(c => pairs.Contains(c.Key)).Select(c => new Slide(c.Key, SlideKind.Pair, named, Upper(c.Sheet), plan["seconds pair"], [c], [], [])));
            // rows of one subject stay together
            var rows = mine.Where(c => !pairs.Contains(c.Key)).ToList();
            var tables = Tables(rows, plan["rows table"]);
            slides.AddRange(tables.Select((part, i) => new Slide($"{group} {i + 1}", SlideKind.Table, named, Counted(mine.Count == rows.Count ? named : $"{named}: more", i, tables.Count), plan["seconds row"] * part.Count, part, [], [])));
        }
        var alone = Parts(only, plan["rows only"]);
        slides.AddRange(alone.Select((rows, i) => new Slide($"only {i + 1}", SlideKind.Only, "Only in one game", Counted("Subjects that the other game does not know", i, alone.Count), plan["seconds only"], [], [], rows)));
        slides.Add(new("closing", SlideKind.Closing, $"A lesson for {audience}s", "Take home", plan["seconds closing"], [], [], []));
        return [.. slides.Select(s => wishes.GetValueOrDefault(s.Key) is { } wish ? s with { Seconds = wish.Seconds ?? s.Seconds, Note = wish.Note } : s)];
    }

    private static string Counted(string title, int part, int parts) => parts <= 1 ? title : $"{title} ({part + 1} of {parts})";

    /// <summary>As many slides as it takes, all about equally full.</summary>
    private static List<List<T>> Parts<T>(List<T> rows, int each)
    {
        var slides = (rows.Count + each - 1) / each;
        return [.. Enumerable.Range(0, slides).Select(i => rows.Skip(i * rows.Count / slides).Take((i + 1) * rows.Count / slides - i * rows.Count / slides).ToList())];
    }

    /// <summary>As few slides as hold the rows, all about equally full.</summary>
    private static List<List<Contrast>> Tables(List<Contrast> rows, int each)
    {
        var tables = Tables(rows, each, SlideLines);
        for (var lines = SlideLines - 1; lines > 0 && Tables(rows, each, lines) is { } even && even.Count == tables.Count; lines--) tables = even;
        return tables;
    }

    private static List<List<Contrast>> Tables(List<Contrast> rows, int each, int most)
    {
        var tables = new List<List<Contrast>>();
        var lines = 0;
        foreach (var row in rows)
        {
            var needed = Math.Max(Lines(row.Sheet.Length + 2 + row.Situation.Length, PlayWide), Math.Max(Ruled(row, t => t.Here), Ruled(row, t => t.There)));
            if (tables.Count == 0 || tables[^1].Count == each || lines + needed > most) { tables.Add([]); lines = 0; }
            tables[^1].Add(row);
            lines += needed;
        }
        return tables;
    }

    private static int Ruled(Contrast row, Func<Turn, string> side) => row.Turns.Take(DeckPage.TurnsInARow).Sum(t => Lines(t.Decision.Length + 2 + side(t).Length, RulingWide));

    // characters that fit in a line of the two columns, and lines that fit under a slide's heading, at the size of DeckPage's tables
    private const int PlayWide = 49, RulingWide = 20, SlideLines = 15;

    private static int Lines(int length, int wide) => (length + wide - 1) / wide;

    internal static string Upper(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
