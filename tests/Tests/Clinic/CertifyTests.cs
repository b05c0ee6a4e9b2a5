using Umpirage.District.Clinic;
using Umpirage.District.Fits;
using Umpirage.District.People;

namespace Umpirage.Tests.Clinic;

/// <summary>Tests and certificates: forms that are parallel, a cut whose errors are known, and what somebody still needs.</summary>
public class CertifyTests
{
    private static readonly IReadOnlyList<CertificateKind> Kinds = Read();
    private static CertificateKind Base => Kinds.Single(k => k.Id == "base softball 12U");

    private static IReadOnlyList<CertificateKind> Read()
    {
        var findings = new List<Finding>();
        var book = CertificateReader.Read("certificates.txt", File.ReadAllText(Folder.Of("codes", "clinic", "certificates.txt")), Shelf.Codes, findings);
        Assert.Empty(findings);
        return book!.Kinds;
    }

    private static IReadOnlyList<TestForm> Forms(CertificateKind kind, string edition = "2026")
    {
        var findings = new List<Finding>();
        var forms = FormMaker.Parallel(kind, kind.Code.StartsWith("softball") ? Desk.Softball : Desk.Baseball, Difficulty.Assumed, edition, findings);
        Assert.Empty(findings);
        return forms!;
    }

    [Fact]
    public void Forms_are_balanced_by_subject_and_difficulty_and_share_no_question()
    {
        foreach (var kind in Kinds)
        {
            var forms = Forms(kind);
            Assert.Equal(kind.Forms, forms.Count);
            var all = forms.SelectMany(f => f.Questions).ToList();
            Assert.Equal(all.Count, all.Select(q => q.Id).Distinct().Count());
            Assert.Equal(all.Count, all.Select(q => q.Unit).Distinct().Count());
            Assert.Equal(all.Count, all.Select(q => $"{q.Situation} {q.Ask}").Distinct().Count());
            foreach (var form in forms) Assert.Equal(kind.Questions.OrderBy(q => q.Group), form.Questions.GroupBy(q => q.Group).Select(g => (g.Key, g.Count())).OrderBy(g => g.Key));
            var hard = forms.Select(f => f.Questions.Average(q => Difficulty.Assumed[q].Item.Difficulty)).ToList();
            Assert.True(hard.Max() - hard.Min() < 0.1, string.Join(" ", hard));
            var cuts = forms.Select(f => Cutting.Of(kind, f, Difficulty.Assumed)).ToList();
            Assert.True(cuts.Max(c => c.Wrong) - cuts.Min(c => c.Wrong) < 0.02);
        }
    }

    [Fact]
    public void Another_edition_gives_other_forms() =>
        Assert.True(Forms(Base).SelectMany(f => f.Questions).Select(q => q.Id).Intersect(Forms(Base, "2027").SelectMany(f => f.Questions).Select(q => q.Id)).Count() < Base.Length * Base.Forms * 3 / 4);

    [Fact]
    public void The_cut_and_its_error_are_those_of_the_judges()
    {
        // 72, 76, 78, 74, 75: mean 75, standard deviation 2.236, by hand; divided by the root of five, 1
        Assert.Equal(75, Base.Cut, 1e-9);
        Assert.Equal(1.0, Base.CutError!.Value, 1e-9);
        Assert.Equal((25, 19), (Base.Length, Base.Needed));
    }

    /// <summary>The error rate of the decision, counted with learners of known ability who answer a form.</summary>
    [Fact]
    public void The_decisions_error_rate_is_what_simulated_learners_show()
    {
        var form = Forms(Base)[0];
        var cut = Cutting.Of(Base, form, Difficulty.Assumed);
        Item[] items = [.. form.Questions.Select(q => Difficulty.Assumed[q].Item)];
        var standard = Cutting.AbilityAt(items, Base.Cut / 100);
        var random = new Random(9);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var (pass, fail, close, clear, people) = (0, 0, 0, 0, Folder.Count(20000, 400000));
        for (var p = 0; p < people; p++)
        {
            var ability = Normal();
            var right = items.Count(i => random.NextDouble() < i.Chance(ability));
            var passed = right >= Base.Needed;
            var verdict = Of(right, default, "A") with { Error = cut.Error };
            if (verdict.Verdict == Verdict.Close) close++;
            else if (verdict.Verdict == Verdict.Passed != ability >= standard) clear++;
            if (passed && ability < standard) pass++;
            if (!passed && ability >= standard) fail++;
        }
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"cut {cut.Cut:0.0} % give or take {cut.CutError:0.0}, a person's score give or take {cut.ScoreError:0.0} %; wrongly passed {cut.FalsePass:0.0%}, wrongly failed {cut.FalseFail:0.0%} (simulated {(double)pass / people:0.0%}, {(double)fail / people:0.0%}); wrong if the cut lay an error lower {cut.WrongIfLower:0.0%}, higher {cut.WrongIfHigher:0.0%}; within one standard error {cut.Close:0.0%} (simulated {(double)close / people:0.0%}), wrongly decided outside it {cut.WrongClear:0.0%} (simulated {(double)clear / people:0.0%})"));
        Assert.Equal(cut.FalsePass, (double)pass / people, 0.006);
        Assert.Equal(cut.FalseFail, (double)fail / people, 0.006);
        Assert.Equal(cut.Close, (double)close / people, 0.01);
        Assert.Equal(cut.WrongClear, (double)clear / people, 0.004);
        // that is what the retest or talk is good for
        Assert.True(cut.WrongClear < cut.Wrong / 2);
        Assert.True(cut.Assumed);
    }

    [Fact]
    public void Scores_of_equal_questions_are_binomial()
    {
        // five fair coins: at least four heads in 6 of 32 cases
        Assert.Equal(6.0 / 32, Cutting.Passing([.. Enumerable.Repeat(new Item(1, 0), 5)], 0, 4), 1e-12);
        Assert.Equal(0, Cutting.AbilityAt([.. Enumerable.Repeat(new Item(1, 0), 5)], 0.5), 1e-9);
    }

    private static Sat Of(int right, DateOnly day, string form, string? talkedBy = null) => new("p", Base.Id, form, day, right, Base.Length, Base.Cut, 8.6, Base.Code, Base.Position, "chief", talkedBy);

    private static readonly Division[] Divisions = [new("SB 10U", "softball/10U", 1, true), new("SB 12U", "softball/12U+Oslemoor", 2, false), new("BB 11-12", "baseball/12U", 2, false)];

    [Fact]
    public void What_somebody_still_needs_is_counted_by_content_and_says_where_it_is_offered()
    {
        var day = new DateOnly(2026, 4, 1);
        List<Attendance> attended = [new("p", "rules softball", new(2026, 3, 1), "t"), new("p", "base work", new(2023, 3, 1), "t"), new("other", "with young people", day, "t")];
        TimeOnly evening = new(18, 30);
        List<Offer> offers = [new("base work", new(2026, 3, 20), evening, "Pellwick hall", "t"), new("base work", new(2026, 4, 18), evening, "Tarnholt hall", "t"), new("base work", new(2026, 5, 9), evening, "Pellwick hall", "t")];
        List<Sat> sat = [Of(15, new(2026, 3, 2), "base softball 12U 2026 A")];
        var needs = Needs.Of(Base, "p", attended, sat, offers, day);
        Assert.Equal(
        [
            "Base umpiring on the field: attended on 2023-03-01, good until 2025-05-09", "Working with young people: not attended yet",
            "The test: on 2026-03-02 15 of 25 right (60 %), the cut 75 % give or take 8.6: not passed",
        ], needs.Select(n => $"{n.What}: {n.Why}"));
        Assert.Equal((new DateOnly(2026, 4, 18), "Tarnholt hall"), (needs[0].Next!.Day, needs[0].Next!.Place));
        Assert.Null(Needs.Award(Base, "p", attended, sat, Divisions, day));
        attended.AddRange([new("p", "base work", day, "t"), new("p", "with young people", day, "t")]);
        Assert.Null(Needs.Award(Base, "p", attended, sat, Divisions, day));
        sat.Add(Of(22, day, "base softball 12U 2026 B"));
        // the division as the leagues call it, for by that name crews look it up
        Assert.Equal(new Certificate("p", "softball", "SB 12U", Position.Base, day, day.AddDays(365)), Needs.Award(Base, "p", attended, sat, Divisions, day));
        Assert.Null(Needs.Award(Base, "p", attended, sat, [], day));
        Assert.Null(Needs.Award(Base, "p", attended, sat, Divisions, day.AddDays(366)));
    }

    [Fact]
    public void A_certificate_of_a_higher_division_or_the_plate_stands_for_a_lower_one_and_the_bases()
    {
        var (day, order) = (new DateOnly(2026, 5, 16), Shelf.Roster.Divisions);
        Certificate Of(string division, Position position, string game = "softball") => new("p", game, division, position, new(2026, 3, 15), new(2027, 3, 14));
        Division[] played = [.. Divisions, new("SB 16U+", "softball/18U+Oslemoor", 2, false)];
        foreach (var fits in (Certificate[])[Of("SB 12U", Position.Base), Of("SB 16U+", Position.Base), Of("SB 12U", Position.Plate)]) Assert.Equal(fits, Needs.Held(Base, [fits], played, order, day));
        foreach (var not in (Certificate[])[Of("SB 10U", Position.Plate), Of("BB 11-12", Position.Base, "baseball"), Of("SB 14U", Position.Base), Of("SB 12U", Position.Base) with { Until = day.AddDays(-1) }]) Assert.Null(Needs.Held(Base, [not], played, order, day));
        Assert.Null(Needs.Held(Kinds.Single(k => k.Id == "plate softball 12U"), [Of("SB 12U", Position.Base)], played, order, day));
    }

    /// <summary>Cut 75 % give or take 8.6: of 25 questions 84 % and more pass, 64 % and less do not, between them another form might have said otherwise.</summary>
    [Fact]
    public void A_result_within_one_standard_error_is_a_retest_or_a_talk()
    {
        var day = new DateOnly(2026, 4, 1);
        Verdict By(int right) => Of(right, day, "A").Verdict;
        Assert.Equal([Verdict.NotPassed, Verdict.Close, Verdict.Close, Verdict.Close, Verdict.Close, Verdict.Passed], new[] { 16, 17, 18, 19, 20, 21 }.Select(By));
        Assert.False(Of(19, day, "A").Suffices);
        Assert.True(Of(19, day, "A", "chief").Suffices);
        // below the cut a talk is not enough
        Assert.False(Of(18, day, "A", "chief").Suffices);
        Assert.True(Of(21, day, "A").Suffices);
        Assert.EndsWith("retest or talk", Of(19, day, "A").InWords);
    }

    [Fact]
    public void Nobody_is_asked_a_question_of_a_test_twice_however_often_they_sit_it()
    {
        var (asked, forms) = (new HashSet<string>(), new List<string>());
        // what was drilled may not come into a form that is made beyond the edition's own
        var inUse = FormMaker.InUse([Base], _ => Desk.Softball, Difficulty.Assumed, "2026");
        var drilled = Desk.Softball.Questions.Where((q, i) => i % 3 == 0 && !inUse.Contains(q.Case)).Select(q => q.Id).ToHashSet();
        for (var sitting = 0; sitting < Base.Forms + 3; sitting++)
        {
            var findings = new List<Finding>();
            var form = Needs.NextForm(Base, Desk.Softball, Difficulty.Assumed, "2026", asked, drilled, findings);
            Assert.Empty(findings);
            Assert.Equal(Base.Length, form!.Questions.Count);
            Assert.DoesNotContain(form.Questions, q => !asked.Add(q.Id) || drilled.Contains(q.Id));
            forms.Add(form.Id);
        }
        Assert.Equal(forms.Count, forms.Distinct().Count());
    }

    [Fact]
    public void A_bad_file_tells_every_fault()
    {
        var findings = new List<Finding>();
        Assert.Null(CertificateReader.Read("c.txt", "unit a: A | soon\ncertificate x: X\n  code: nowhere\n  position: left field\n  units: b\n  questions: runing 3, batting many\n  forms: 0\n  cut by judges: 7\n  good for: ever\ncertificate y: Y\n  code: softball/12U\n", Shelf.Codes, findings));
        Assert.Equal(
        [
            "c.txt, line 1: cannot read 'unit a: A | soon'; write 'unit ID: title | 400 days'",
            $"c.txt, line 3: 'nowhere' is not a code; write {CodeAddress.Form}",
            "c.txt, line 4: 'position' is 'left field'; allowed is plate or base",
            "c.txt, line 5: there is no unit 'b'; there is none",
            "c.txt, line 6: there is no group 'runing'; did you mean 'running'?",
            "c.txt, line 6: cannot read 'batting many'; write a group and a number from 1 to 50: 'running 6'",
            "c.txt, line 7: 'forms' is '0'; allowed is a whole number from 1 to 20",
            "c.txt, line 8: a judge's cut is '7'; allowed is a percentage from 30 to 100",
            "c.txt, line 9: 'good for' is 'ever'; allowed are 1 to 4000 days: '365 days'",
            "c.txt, line 10: the certificate 'y' has no position, units, questions, forms, cut by judges and good for",
        ], findings.Select(f => f.ToString()));
    }
}
