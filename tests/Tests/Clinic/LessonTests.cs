using System.Text.RegularExpressions;
using Umpirage.District.Clinic;
using Umpirage.District.Diamonds;

namespace Umpirage.Tests.Clinic;

/// <summary>Lessons on what differs: complete against the computed crossover, short enough, and kept with what the instructor wrote.</summary>
public class LessonTests
{
    private static Lesson Make(string here, string there, string audience = "umpire", InstructorFile? edits = null, params string[] subjects)
    {
        var findings = new List<Finding>();
        var lesson = LessonMaker.Of(Desk.Syllabus, Shelf.Code(Shelf.Codes, here), Shelf.Code(Shelf.Codes, there), audience, edits ?? InstructorFile.Empty, findings, subjects: subjects);
        Assert.Empty(findings);
        return lesson!;
    }

    [Theory]
    [InlineData("baseball/12U", "softball/12U")]
    [InlineData("softball/12U", "baseball/12U")]
    [InlineData("softball/18U+NFHS@2017-04-01", "softball/18U+NFHS@2026-04-01")]
    public void Every_line_of_the_crossover_is_in_the_lesson(string here, string there)
    {
        var lesson = Make(here, there);
        var findings = new List<Finding>();
        var differences = Crossover.Of(Shelf.Codes, lesson.Here, lesson.There, findings).Where(d => !d.Same).ToList();
        static string Key(string sheet, RulingDifference r) => $"{sheet}|{r.Decision}|{r.When}|{r.Here}|{r.There}";
        var expected = differences.SelectMany(d => d.Rulings.Select(r => Key(d.Sheet.Name, r))).Order();
        Assert.Equal(expected, lesson.All.SelectMany(c => c.Lines.Select(l => Key(c.Sheet, l))).Concat(lesson.Follows.Select(f => Key(f.Sheet, f.Line))).Order());
        Assert.Equal(differences.SelectMany(d => d.Values.Select(v => $"{d.Sheet.Name}|{v.Name}")).Order(), lesson.Numbers.Select(n => $"{n.Sheet}|{n.Name}").Order());
        Assert.Equal(differences.Where(d => d.OnlyIn is not null).Select(d => d.Sheet.Name).Order(), lesson.Only.Select(o => o.Sheet).Order());
        // and on the slides, each difference once
        Assert.Equal(lesson.All.Select(c => c.Key).Order(), lesson.Slides.SelectMany(s => s.Contrasts).Select(c => c.Key).Order());
        Assert.Equal(lesson.Numbers.Count, lesson.Slides.Sum(s => s.Numbers.Count));
        Assert.Equal(lesson.Only.Count, lesson.Slides.Sum(s => s.Only.Count));
        Assert.Equal(lesson.All.Count, lesson.All.Select(c => c.Key).Distinct().Count());
        Assert.NotNull(InstructorFile.Read("instructor.txt", InstructorFile.Write(lesson), findings));
        Assert.Empty(findings);
        Assert.True(lesson.Seconds <= 45 * 60, $"{lesson.Seconds} s");
    }

    /// <summary>The plays of a lesson ruled by the engine from what is given, under both codes: what the slide says is what comes out.</summary>
    [Fact]
    public void Every_play_is_ruled_as_the_slide_says()
    {
        var lesson = Make("baseball/12U", "softball/12U");
        foreach (var contrast in lesson.All)
        {
            Holds(lesson, contrast.Sheet, contrast.Given, contrast.Turns);
            if (contrast.Twin is { } twin) Holds(lesson, contrast.Sheet, twin.Given, twin.Turns);
        }
    }

    /// <summary>Cut to subjects: their differences as in the whole lesson, their pairs of one code ruled by the engine as they say, and nothing of any other subject on any page.</summary>
    [Theory]
    [InlineData("baseball/12U", "softball/12U", "infield fly", "double first base", "lightning")]
    [InlineData("softball/12U", "softball/12U", "infield fly", "obstruction of a runner")]
    [InlineData("softball/12U", "baseball/12U", "balk", "infield fly")]
    // a local option makes one of the beliefs true: the lesson is made without it
    [InlineData("softball/12U+Oslemoor", "softball/12U+Oslemoor", "delivery")]
    public void A_lesson_on_chosen_subjects_has_their_pairs_and_no_others(string here, string there, params string[] subjects)
    {
        var lesson = Make(here, there, subjects: subjects);
        Assert.Equal(subjects.Order(), lesson.Subjects.Order());
        Assert.Equal(subjects.Order(), lesson.All.Select(c => c.Sheet).Distinct().Order());
        foreach (var sheet in lesson.Numbers.Select(n => n.Sheet).Concat(lesson.Only.Select(o => o.Sheet)).Concat(lesson.Beliefs.Select(b => b.Belief.Sheet)).Concat(lesson.Follows.Select(f => f.Sheet))) Assert.Contains(sheet, subjects);
        Assert.Equal(lesson.All.Select(c => c.Key).Order(), lesson.Slides.SelectMany(s => s.Contrasts).Select(c => c.Key).Order());
        Assert.DoesNotContain("@", lesson.Title);
        if (here != there) Assert.Equal(Make(here, there).All.Where(c => subjects.Contains(c.Sheet)).Select(c => c.Situation).Order(), lesson.All.Where(c => !c.Alone).Select(c => c.Situation).Order());
        else Assert.DoesNotContain(lesson.All, c => !c.Alone);
        foreach (var pair in lesson.All.Where(c => c.Alone))
        {
            Assert.Equal(1, pair.Given.Zip(pair.Twin!.Given).Count(p => p.First != p.Second));
            Assert.NotEqual(pair.Turns[0].There, pair.Twin.Turns[0].There);
            Holds(lesson.There, pair.Sheet, pair.Given, pair.Turns, t => (t.There, t.ThereBy.Rule));
            Holds(lesson.There, pair.Sheet, pair.Twin.Given, pair.Twin.Turns, t => (t.There, t.ThereBy.Rule));
        }
        foreach (var subject in subjects) Assert.Contains(lesson.Slides, s => s.Kind == SlideKind.Pair && s.Contrasts[0].Sheet == subject);
        foreach (var page in (string[])[DeckPage.Html(lesson, Desk.Pictures), NotesPage.Html(lesson), HandoutPage.Html(lesson, Desk.Plan, Desk.Pictures), HandoutPage.Key(lesson)])
            Assert.DoesNotContain("Uncaught third strike", page);
    }

    [Fact]
    public void Subjects_that_cannot_be_taught_are_all_told()
    {
        var findings = new List<Finding>();
        Assert.Null(LessonMaker.Of(Desk.Syllabus, Shelf.Code(Shelf.Codes, "baseball/12U"), Shelf.Code(Shelf.Codes, "softball/12U"), "scorekeeper", InstructorFile.Empty, findings, subjects: ["infeld fly", "balk", "infield fly"]));
        Assert.Equal(
        [
            "lesson: there is no subject 'infeld fly'; did you mean 'infield fly'?",
            "lesson: 'balk' is for baseball only; take a code of baseball as the one they learn",
            "lesson: 'infield fly' is not for scorekeepers; it is for umpires or managers",
        ], findings.Select(f => f.ToString()));
    }

    private static void Holds(Code code, string sheet, IReadOnlyList<string> given, IReadOnlyList<Turn> turns, Func<Turn, (string Ruled, string Rule)> said)
    {
        var findings = new List<Finding>();
        var table = Casebook.Table(Shelf.Codes, code.Address.ToString(), sheet, Shelf.Today, "lesson", findings)!;
        var ruling = Umpire.Rule(table, Situation.Read(table.Sheet, "lesson", given.Select(g => new Phrase(g, 0)), findings));
        Assert.Empty(findings);
        foreach (var turn in turns)
        {
            Assert.Equal([said(turn).Ruled], ruling.Find(turn.Decision)!.Values);
            Assert.Contains(said(turn).Rule, ruling.Find(turn.Decision)!.By.Select(b => b.Id));
        }
    }

    private static void Holds(Lesson lesson, string sheet, IReadOnlyList<string> given, IReadOnlyList<Turn> turns)
    {
        foreach (var (code, side) in new (Code, Func<Turn, string>)[] { (lesson.Here, t => t.Here), (lesson.There, t => t.There) })
        {
            var findings = new List<Finding>();
            var table = Casebook.Table(Shelf.Codes, code.Address.ToString(), sheet, Shelf.Today, "lesson", findings)!;
            var ruling = Umpire.Rule(table, Situation.Read(table.Sheet, "lesson", given.Select(g => new Phrase(g, 0)), findings));
            Assert.Empty(findings);
            foreach (var turn in turns) Assert.Equal([side(turn)], ruling.Find(turn.Decision)!.Values);
        }
    }

    [Fact]
    public void A_pair_is_two_plays_that_differ_in_one_fact_and_in_the_ruling()
    {
        var lesson = Make("baseball/12U", "softball/12U");
        foreach (var contrast in lesson.All.Where(c => c.Twin is not null))
        {
            var twin = contrast.Twin!;
            Assert.Equal(contrast.Given.Count, twin.Given.Count);
            Assert.Equal(1, contrast.Given.Zip(twin.Given).Count(p => p.First != p.Second));
            Assert.Single(contrast.Told, t => t == twin.First);
            Assert.DoesNotContain(twin.Second, contrast.Told);
            Assert.Equal(contrast.Turns.Select(t => t.Decision), twin.Turns.Select(t => t.Decision));
            Assert.Contains(contrast.Turns.Zip(twin.Turns).Take(PlayRows.TurnsInARow), p => p.First.Here != p.Second.Here || p.First.There != p.Second.There);
            Assert.All(contrast.Turns.Concat(twin.Turns), t => Assert.False(string.IsNullOrWhiteSpace(t.HereBy.Source) || string.IsNullOrWhiteSpace(t.ThereBy.Source)));
        }
        // nearly every difference has one, and every slide of its own shows one
        Assert.True(lesson.All.Count(c => c.Twin is not null) > lesson.All.Count * 8 / 10, $"{lesson.All.Count(c => c.Twin is not null)} of {lesson.All.Count}");
        Assert.All(lesson.Slides.Where(s => s.Kind == SlideKind.Pair), s => Assert.NotNull(s.Contrasts[0].Twin));
    }

    /// <summary>Silent reading of English non-fiction: 238 words a minute (Brysbaert 2019, from memory). Every word of the slides, sources and all, counted from the page itself.</summary>
    [Fact]
    public void The_slides_can_be_read_in_the_time_they_are_given()
    {
        var lesson = Make("baseball/12U", "softball/12U");
        var page = Regex.Replace(DeckPage.Slides(lesson, new Dictionary<string, Picture>()), "<aside.*?</aside>|<cite>.*?</cite>|<header>.*?</header>", " ", RegexOptions.Singleline);
        var words = Regex.Replace(page, "<[^>]+>", " ").Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.True(words <= 45 * 238, $"{words} words");
        foreach (var slide in lesson.Slides.Where(s => s.Kind == SlideKind.Table)) Assert.True(slide.Seconds >= slide.Contrasts.Sum(c => c.Turns.Count), slide.Key);
    }

    [Fact]
    public void A_line_no_play_shows_hangs_on_a_ruling_only_one_code_makes()
    {
        var lesson = Make("baseball/12U", "softball/12U");
        foreach (var follow in lesson.Follows)
        {
            var (one, two) = (Shelf.Table(lesson.Here.Address.ToString(), follow.Sheet), Shelf.Table(lesson.There.Address.ToString(), follow.Sheet));
            var facts = one.Sheet.FactCount;
            bool Fits(Cell c) => Enumerable.Range(0, facts).All(t => (c.Facts[t] & follow.Line.Space[t]) != 0) && c.Values.Select((v, d) => (follow.Line.Space[facts + d] >> v & 1) != 0).All(x => x);
            var d = one.Sheet.Bound.Find(follow.Line.Decision)!.Index - facts;
            string Value(Cell c) => one.Sheet.Terms[facts + d].Values[c.Values[d]];
            Assert.DoesNotContain(one.Cells.Where(c => Fits(c) && Value(c) == follow.Line.Here), a => two.Cells.Any(b => Fits(b) && Value(b) == follow.Line.There && Enumerable.Range(0, facts).All(t => (a.Facts[t] & b.Facts[t] & follow.Line.Space[t]) != 0)));
        }
        Assert.InRange(lesson.Follows.Count, 0, lesson.All.Count / 10);
    }

    [Fact]
    public void An_audience_sees_its_own_groups_only()
    {
        var scorekeeper = Make("baseball/12U", "softball/12U", "scorekeeper");
        Assert.All(scorekeeper.All, c => Assert.Contains(c.Group, Desk.Plan.Audiences["scorekeeper"]));
        Assert.True(scorekeeper.All.Count < Make("baseball/12U", "softball/12U").All.Count);
    }

    [Fact]
    public void What_the_instructor_wrote_survives_and_what_went_stale_is_told()
    {
        var first = Make("softball/18U+NFHS@2017-04-01", "softball/18U+NFHS@2026-04-01");
        var text = InstructorFile.Write(first);
        var key = first.All[0].Key;
        text = text.Replace($"  said: {first.All[0].Print}", $"  show: slide\n  seconds: 90\n  note: Tell the one about the wet Saturday.\n  said: {first.All[0].Print}");
        var findings = new List<Finding>();
        var edits = InstructorFile.Read("instructor.txt", text, findings)!;
        Assert.Empty(findings);
        var again = Make("softball/18U+NFHS@2017-04-01", "softball/18U+NFHS@2026-04-01", edits: edits);
        Assert.Empty(again.Stale);
        Assert.Equal((90, "Tell the one about the wet Saturday."), (again.Slides.Single(s => s.Key == key).Seconds, again.Slides.Single(s => s.Key == key).Note));
        // a reader's own text comes back word for word
        Assert.Equal(text, InstructorFile.Write(again));
        // the same notes under another edition: what is gone and what is new is told, and no note is lost
        var other = Make("softball/18U+NFHS@2010-04-01", "softball/18U+NFHS@2026-04-01", edits: edits);
        Assert.Contains(other.Stale, s => s.Words.StartsWith("new: "));
        Assert.Contains("Tell the one about the wet Saturday.", InstructorFile.Write(other));
        // what nobody has looked at stays stale when something else is kept
        var unseen = InstructorFile.Read("instructor.txt", InstructorFile.Write(other, seen: false), findings)!;
        Assert.Equal(other.Stale, Make("softball/18U+NFHS@2010-04-01", "softball/18U+NFHS@2026-04-01", edits: unseen).Stale);
        Assert.DoesNotContain(Make("softball/18U+NFHS@2010-04-01", "softball/18U+NFHS@2026-04-01", edits: InstructorFile.Read("instructor.txt", InstructorFile.Write(other), findings)!).Stale, s => !s.Words.StartsWith("gone: "));
        // a ruling that is not what it was
        var changed = InstructorFile.Read("instructor.txt", text.Replace($"said: {first.All[0].Print}", "said: 0000000000"), findings)!;
        Assert.Contains(Make("softball/18U+NFHS@2017-04-01", "softball/18U+NFHS@2026-04-01", edits: changed).Stale, s => s.Words.StartsWith("changed: ") && s.Words.Contains("wet Saturday") && s.Key == key);
    }

    [Fact]
    public void A_bad_instructor_file_tells_every_fault()
    {
        var findings = new List<Finding>();
        Assert.Null(InstructorFile.Read("instructor.txt", "difference abc: one\n  show: maybe\n  seconds: soon\n  weight: 3\n", findings));
        Assert.Equal(
        [
            "instructor.txt, line 2: 'show' is 'maybe'; allowed is slide, row, no or as it comes",
            "instructor.txt, line 3: 'seconds' is 'soon'; allowed is a whole number from 5 to 1800",
            "instructor.txt, line 4: cannot read 'weight: 3'; write 'show: slide, row, no or as it comes', 'seconds: 40' or 'note: …'",
        ], findings.Select(f => f.ToString()));
    }

    [Fact]
    public void The_pages_need_nothing_else_and_escape_what_they_show()
    {
        var findings = new List<Finding>();
        var lesson = Make("baseball/12U", "softball/12U", edits: InstructorFile.Read("i", "slide opening: x\n  note: <script>alert(1)</script>\n", findings));
        var pages = new[] { DeckPage.Html(lesson, new Dictionary<string, Picture>()), HandoutPage.Html(lesson, Desk.Plan, Desk.Pictures), HandoutPage.Key(lesson), NotesPage.Html(lesson) };
        foreach (var page in pages)
        {
            Assert.DoesNotContain("http", page.Replace("http://www.w3.org/2000/svg", ""));
            Assert.DoesNotContain("<script>alert", page);
            Assert.Contains("@media print", page);
        }
        foreach (var contrast in lesson.All) Assert.All(contrast.Told, t => Assert.Contains(t.Replace("\"", "&quot;"), pages[1]));
    }
}
