using System.Globalization;
using Umpirage.District.Clinic;
using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.Store.Files;

public sealed class ClinicFile : FileKind
{
    public override string Name => "clinics";
    public override string About => "When and where content units are taught; the same unit on two days is two rows.";
    public override IReadOnlyList<Column> Columns =>
        [new("unit", true, "a content unit, as in codes/clinic"), new("day", true, "2026-05-16"), new("from", true, "18:30"), new("place", true, "where"), new("taught by", true, "key of an adult")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var teacher = row.Known("taught by", known.People, "person");
        if (row.Fine("taught by") && known.Minors.Contains(teacher)) row.Fault("taught by", teacher, "an adult");
        return [new Offer(row.Key("unit"), row.Day("day"), row.Clock("from"), row.Needed("place", "a place"), teacher)];
    }

    public override string Owner(object record) => record is Offer o ? $"{o.Unit}/{Written.Day(o.Day)}/{o.Place}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Offers;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Offers.AsEnumerable().OrderBy(o => o.Day).ThenBy(o => o.From).ThenBy(o => o.Unit, StringComparer.Ordinal).ThenBy(o => o.Place, StringComparer.Ordinal)
        .Select(o => new[] { o.Unit, Written.Day(o.Day), Written.Clock(o.From), o.Place, o.TaughtBy });
}

public sealed class AttendanceFile : FileKind
{
    public override string Name => "attendance";
    public override string About => "Who attended which content unit, when and with whom.";
    public override IReadOnlyList<Column> Columns => [new("person", true, "key of a person"), new("unit", true, "a content unit, as in codes/clinic"), new("day", true, "2026-05-16"), new("taught by", true, "key of an adult")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var attended = new Attendance(row.Known("person", known.People, "person"), row.Key("unit"), row.Day("day"), row.Known("taught by", known.People, "person"));
        if (row.Fine("taught by") && known.Minors.Contains(attended.TaughtBy)) row.Fault("taught by", attended.TaughtBy, "an adult");
        if (row.Fine("day") && attended.Day > known.Today) row.Fault("day", Written.Day(attended.Day), $"a day up to {Written.Day(known.Today)}");
        return [attended];
    }

    public override string Owner(object record) => record is Attendance a ? $"{a.Person}/{a.Unit}/{Written.Day(a.Day)}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Attendances;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Attendances.AsEnumerable().OrderBy(a => a.Person, StringComparer.Ordinal).ThenBy(a => a.Day).ThenBy(a => a.Unit, StringComparer.Ordinal)
        .Select(a => new[] { a.Person, a.Unit, Written.Day(a.Day), a.TaughtBy });
}

public sealed class TestFile : FileKind
{
    private const int MostQuestions = 200;

    public override string Name => "tests";
    public override string About => "Tests that were sat: right answers, and the cut with its standard error, in percent, as they stood that day.";
    public override IReadOnlyList<Column> Columns =>
    [
        new("person", true, "key of a person"), new("certificate", true, "its kind, as in codes/clinic"), new("form", true, "the form's name"), new("day", true, "2026-05-16"), new("right", true, "right answers"), new("of", true, "questions"),
        new("cut", true, "percent"), new("error", true, "its standard error, percent"), new("code", true, "the code tested"), new("position", true, "plate or base"), new("proctor", true, "key of an adult"), new("talked by", false, "who talked a close one over"),
    ];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var sat = new Sat(row.Known("person", known.People, "person"), row.Key("certificate"), row.Needed("form", "the form's name"), row.Day("day"), row.Whole("right", 0, MostQuestions), row.Whole("of", 1, MostQuestions), row.Decimal("cut", 0, 100), row.Decimal("error", 0, 50),
            row.Needed("code", CodeAddress.Form), row.Choice<Position>("position", p => p.ToString().ToLowerInvariant()), row.Known("proctor", known.People, "person"), row.Optional("talked by") is null ? null : row.Known("talked by", known.People, "person"));
        if (row.Fine("right", "of") && sat.Right > sat.Of) row.Fault("right", Text(sat.Right), $"at most the {sat.Of} questions");
        if (row.Fine("code") && CodeAddress.Read(sat.Code) is null) row.Fault("code", sat.Code, CodeAddress.Form);
        if (row.Fine("day") && sat.Day > known.Today) row.Fault("day", Written.Day(sat.Day), $"a day up to {Written.Day(known.Today)}");
        foreach (var (column, adult) in ((string, string?)[])[("proctor", sat.Proctor), ("talked by", sat.TalkedBy)])
        {
            if (adult is null || !row.Fine(column, "person")) continue;
            if (known.Minors.Contains(adult)) row.Fault(column, adult, "an adult");
            if (adult == sat.Person) row.Fault(column, adult, "somebody else than who sat the test");
        }
        return [sat];
    }

    public override string Owner(object record) => record is Sat s ? $"{s.Person}/{s.Kind}/{s.Form}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Sittings;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Sittings.AsEnumerable().OrderBy(s => s.Person, StringComparer.Ordinal).ThenBy(s => s.Day).ThenBy(s => s.Kind, StringComparer.Ordinal).ThenBy(s => s.Form, StringComparer.Ordinal).Select(s => new[]
    {
        s.Person, s.Kind, s.Form, Written.Day(s.Day), Text(s.Right), Text(s.Of), Written.Number(s.Cut), Written.Number(s.Error), s.Code, s.Position.ToString().ToLowerInvariant(), s.Proctor, s.TalkedBy,
    });

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}

public sealed class AnswerFile : FileKind
{
    public override string Name => "answers";
    public override string About => "Answers given in drills and tests. Whoever keeps this file keeps it as carefully as a school keeps its marks.";
    public override IReadOnlyList<Column> Columns =>
    [
        new("person", true, "key of a person"), new("at", true, "when it was asked, UTC: 2026-05-16 13:05:30"), new("question", true, "its id"), new("rule", true, "what is remembered: game: subject: rule: decision"), new("subject", true, "the sheet"),
        new("code", true, "the code asked under"), new("edition", true, "the rule code's stamp"), new("answer", false, "the answer chosen"), new("right", true, "yes or no"), new("seconds", true, "to the answer"), new("form", false, "the test's form; nothing for a drill"),
    ];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var answer = new Answered(row.Known("person", known.People, "person"), row.Instant("at"), row.Key("question"), row.Needed("rule", "game: subject: rule: decision"), row.Needed("subject", "a sheet"), row.Needed("code", CodeAddress.Form),
            row.Needed("edition", "a stamp"), row.Text("answer"), row.Yes("right"), row.Whole("seconds", 0, Answered.MostSeconds), row.Text("form"));
        if (row.Fine("code") && CodeAddress.Read(answer.Code) is null) row.Fault("code", answer.Code, CodeAddress.Form);
        if (row.Fine("answer", "right") && answer is { Answer: "", Right: true }) row.Fault("right", "yes", "no, where no answer was chosen");
        return [answer];
    }

    public override string Owner(object record) => record is Answered a ? $"{a.Person}/{Written.Instant(a.At)}/{a.Question}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Answers;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Answers.AsEnumerable().OrderBy(a => a.Person, StringComparer.Ordinal).ThenBy(a => a.At).ThenBy(a => a.Question, StringComparer.Ordinal).Select(a => new[]
    {
        a.Person, Written.Instant(a.At), a.Question, a.Unit, a.Sheet, a.Code, a.Edition, a.Answer, Written.Yes(a.Right), a.Seconds.ToString(CultureInfo.InvariantCulture), a.Form,
    });
}
