using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>
/// Makes a lesson from the computed crossover. Every difference gets a place: the subjects asked about most a slide of their own with a pair of plays, the
/// others a row of a table at the end of their group; as many slides of their own as the time allows. Time is counted by the words to be read.
/// </summary>
public static class LessonMaker
{
    /// <summary>Makes the lesson; null with the reasons when the audience is unknown or even tables alone take longer than the minutes allow.</summary>
    /// <param name="minutes">Minutes for the slides; null: as the plan says.</param>
    /// <param name="subjects">Only these: what differs in them, and every pair of plays that teaches them under the code to be learnt. None: everything that differs.</param>
    public static Lesson? Of(Syllabus syllabus, Code here, Code there, string audience, InstructorFile edits, List<Finding> findings, int? minutes = null, IReadOnlyList<string>? subjects = null)
    {
        var plan = syllabus.Plan;
        if (!plan.Audiences.TryGetValue(audience, out var groups))
        {
            findings.Add(new(FindingKind.UnknownWord, "lesson", 0, $"there is no audience '{audience}'; {Words.Offer(audience, [.. plan.Audiences.Keys])}"));
            return null;
        }
        var before = findings.Count;
        var allowed = (minutes ?? plan["minutes"]) * 60;
        var chosen = Chosen(syllabus, there, audience, groups, subjects ?? [], findings);
        if (findings.Count > before) return null;
        bool Taught(Sheet sheet) => chosen.Count > 0 ? chosen.Contains(sheet) : groups.Contains(sheet.Group);
        var differences = Crossover.Of(syllabus.Book, here, there, findings).Where(d => !d.Same && Taught(d.Sheet)).OrderBy(d => Place(groups, d.Sheet.Group)).ToList();
        var follows = new List<Follow>();
        List<Contrast> different = [.. differences.Where(d => d.Rulings.Count > 0).SelectMany(d => Contrasts(syllabus, here, there, d, follows, findings))];
        List<Contrast> all = [.. different.Concat(chosen.SelectMany(s => Rules(syllabus, there, s, different, findings)))
            .GroupBy(c => c.Key).SelectMany(g => g.Select((c, i) => i == 0 ? c : c with { Key = $"{c.Key}-{i + 1}" }))];
        List<NumberRow> numbers = [.. differences.SelectMany(d => d.Values.Select(v => new NumberRow(d.Sheet.Name, v.Name, v.Here.Value, v.There.Value, v.Here.Citation.ToString(), v.There.Citation.ToString(), syllabus.Phrases.Caution(d.Sheet.Group))))];
        List<OnlyRow> only = [.. differences.Where(d => d.OnlyIn is not null).OrderBy(d => d.OnlyIn == there.Game ? 0 : 1).Select(d => new OnlyRow(d.Sheet.Name, d.Sheet.About, d.OnlyIn!))];
        // a belief that is so under a local option is no fault of the lesson: it is not taught
        List<Refuted> beliefs = [.. Refuting.Of(syllabus.Book, syllabus.Phrases, syllabus.Beliefs, there, []).Where(b => Taught(syllabus.Book.Sheet(b.Belief.Sheet)!)).OrderByDescending(b => syllabus.Asked.GetValueOrDefault(b.Belief.Sheet))];
        if (findings.Count > before) return null;
        var wishes = edits.Wishes.ToDictionary(w => w.Key);
        List<Contrast> shown = [.. all.Where(c => wishes.GetValueOrDefault(c.Key)?.Show != "no")];
        // one play a subject, and of chosen subjects every pair: first of all one with a second play beside it, then the plainest, with the fewest facts and the most rulings turned
        var firsts = shown.GroupBy(c => chosen.Count == 0 ? c.Sheet : c.Key).Select(g => g.OrderBy(c => c.Weakness).ThenBy(c => c.Given.Count - 2 * c.Turns.Count).ThenBy(c => c.Key, StringComparer.Ordinal).First())
            .Where(c => (chosen.Count == 0 || c.Twin is not null) && wishes.GetValueOrDefault(c.Key)?.Show != "row").OrderBy(c => c.Weakness).ThenByDescending(c => syllabus.Asked.GetValueOrDefault(c.Sheet)).ToList();
        List<Contrast> always = [.. shown.Where(c => wishes.GetValueOrDefault(c.Key)?.Show == "slide")];
        var (known, learnt) = Markup.Names(here, there);
        var about = chosen.Count == 0 ? "" : chosen.Count > MostNamed ? $", {chosen.Count} subjects" : $", {Words.And([.. chosen.Select(s => s.Name)])}";
        var title = $"{learnt}{about}{(known == learnt ? "" : $" for those who know {known}")}";
        for (var own = firsts.Count; own >= 0; own--)
        {
            List<Contrast> pairs = [.. firsts.Take(own).Concat(always).Distinct()];
            var slides = Slides(plan, groups, title, audience, shown, pairs, numbers, only, beliefs, wishes);
            if (slides.Sum(s => s.Seconds) > allowed) continue;
            var quiz = firsts.Concat(shown.OrderByDescending(c => syllabus.Asked.GetValueOrDefault(c.Sheet))).DistinctBy(c => c.Key).Take(plan["questions"]).ToList();
            return new(here, there, audience, title, [.. chosen.Select(s => s.Name)], slides, all, numbers, only, follows, beliefs, edits.Wishes, edits.Stale(all), quiz);
        }
        var needed = Slides(plan, groups, title, audience, shown, always, numbers, only, beliefs, wishes).Sum(s => s.Seconds);
        findings.Add(new(FindingKind.ImpossibleValue, "lesson", 0, $"the differences do not fit in {allowed / 60} minutes even as tables, which take {(needed + 59) / 60}; allow more minutes or name a narrower audience"));
        return null;
    }

    /// <summary>The sheets chosen, in the order of the groups; a finding for each that is no subject of the code to be learnt or not one for the audience.</summary>
    private static List<Sheet> Chosen(Syllabus syllabus, Code there, string audience, IReadOnlyList<string> groups, IReadOnlyList<string> subjects, List<Finding> findings)
    {
        void Fault(string message) => findings.Add(new(FindingKind.UnknownWord, "lesson", 0, message));
        var chosen = new List<Sheet>();
        foreach (var name in subjects)
        {
            if (syllabus.Book.Sheet(name) is not { } sheet) Fault($"there is no subject '{name}'; {Words.Offer(name, [.. syllabus.Book.Sheets.Select(s => s.Name)])}");
            else if (!sheet.Speaks(there.Game)) Fault($"'{sheet.Name}' is for {sheet.OnlyFor} only; take a code of {sheet.OnlyFor} as the one they learn");
            else if (!groups.Contains(sheet.Group)) Fault($"'{sheet.Name}' is not for {audience}s; it is for {Words.Or([.. syllabus.Plan.Audiences.Where(a => a.Value.Contains(sheet.Group)).Select(a => a.Key + "s")])}");
            else if (!chosen.Contains(sheet)) chosen.Add(sheet);
        }
        return [.. chosen.OrderBy(s => Place(groups, s.Group))];
    }

    private static int Place(IReadOnlyList<string> groups, string group)
    {
        for (var i = 0; i < groups.Count; i++) if (Words.Same(groups[i], group)) return i;
        return groups.Count;
    }

    private static IEnumerable<Contrast> Contrasts(Syllabus syllabus, Code here, Code there, SheetDifference difference, List<Follow> follows, List<Finding> findings) =>
        Bank.Table(syllabus.Book, difference.Sheet, here, findings) is { } one && Bank.Table(syllabus.Book, difference.Sheet, there, findings) is { } two ? new ContrastMaker(one, two, syllabus.Phrases).Of(difference.Rulings, follows) : [];

    private static IReadOnlyList<Contrast> Rules(Syllabus syllabus, Code code, Sheet sheet, List<Contrast> different, List<Finding> findings) =>
        Bank.Table(syllabus.Book, sheet, code, findings) is { } table ? new ContrastMaker(table, table, syllabus.Phrases).OfRules(different.Where(c => c.Sheet == sheet.Name)) : [];

    private static List<Slide> Slides(
        LessonPlan plan, IReadOnlyList<string> groups, string title, string audience, List<Contrast> shown, List<Contrast> pairs, List<NumberRow> numbers, List<OnlyRow> only, List<Refuted> beliefs, Dictionary<string, Wish> wishes)
    {
        var slides = new List<Slide> { new("opening", SlideKind.Opening, $"A lesson for {audience}s", title, plan["seconds opening"]) };
        var believed = Parts([.. beliefs.Take(plan["beliefs"])], plan["rows beliefs"]);
        slides.AddRange(believed.Select((rows, i) => new Slide($"beliefs {i + 1}", SlideKind.Beliefs, "True or not?", Counted("What many believe", i, believed.Count), plan["seconds belief"] * rows.Count) { Beliefs = rows }));
        var counted = Parts(numbers, plan["rows numbers"]);
        slides.AddRange(counted.Select((rows, i) => new Slide($"numbers {i + 1}", SlideKind.Numbers, "Numbers first", Counted("What is counted and measured", i, counted.Count), plan["seconds numbers"]) { Numbers = rows }));
        foreach (var group in groups)
        {
            var mine = shown.Where(c => Words.Same(c.Group, group)).ToList();
            var named = plan.Groups[group];
            var own = pairs.Where(c => Words.Same(c.Group, group)).GroupBy(c => c.Sheet).SelectMany(plays => plays).ToList();
            slides.AddRange(own.Select(c => new Slide(c.Key, SlideKind.Pair, named, Words.Upper(c.Sheet), Math.Max(plan["seconds pair"], plan.Reading(Count(c)))) { Contrasts = [c] }));
            var rows = mine.Except(own).ToList();
            var tables = Tables(rows, plan["rows table"]);
            slides.AddRange(tables.Select((part, i) => new Slide($"{group} {i + 1}", SlideKind.Table, named, Counted(own.Count == 0 ? named : $"{named}: more", i, tables.Count), plan.Reading(PlayRows.Of(part).Sum(r => r.Words))) { Contrasts = part }));
        }
        var alone = Parts(only, plan["rows only"]);
        slides.AddRange(alone.Select((rows, i) => new Slide($"only {i + 1}", SlideKind.Only, "Only in one game", Counted("Subjects that only one game knows", i, alone.Count), plan["seconds only"]) { Only = rows }));
        slides.Add(new("closing", SlideKind.Closing, $"A lesson for {audience}s", "Take home", plan["seconds closing"]));
        return [.. slides.Select(s => wishes.GetValueOrDefault(s.Key) is { } wish ? s with { Seconds = wish.Seconds ?? s.Seconds, Note = wish.Note } : s)];
    }

    /// <summary>Words of a pair that the room reads: both plays, and what is ruled on them.</summary>
    private static int Count(Contrast c) => c.Told.Sum(PlayRows.Count) + (c.Twin is { } twin ? PlayRows.Count(twin.Second) + Count(twin.Turns) : 0) + Count(c.Turns);

    private static int Count(IReadOnlyList<Turn> turns) =>
        turns.Take(PlayRows.TurnsInARow).Sum(t => PlayRows.Count(t.Ask) + PlayRows.Count(t.Here) + PlayRows.Count(t.There)) + PlayRows.Count(turns[0].HereBy.Why) + PlayRows.Count(turns[0].ThereBy.Why);

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
        foreach (var row in rows)
        {
            if (tables.Count == 0 || tables[^1].Count == each || PlayRows.Of([.. tables[^1], row]).Sum(r => r.Lines) > most) tables.Add([]);
            tables[^1].Add(row);
        }
        return tables;
    }

    // lines that fit under a slide's heading, at the size of DeckPage's tables
    private const int SlideLines = 15;

    // more subjects than this are counted in a title, not named
    private const int MostNamed = 3;
}
