using Umpirage.District.People;

namespace Umpirage.District.Clinic;

/// <summary>Somebody attended a content unit, taught by somebody.</summary>
public sealed record Attendance(string Person, string Unit, DateOnly Day, string TaughtBy);

/// <summary>A content unit is offered on a day, in the district's own time, at a place, taught by somebody.</summary>
public sealed record Offer(string Unit, DateOnly Day, TimeOnly From, string Place, string TaughtBy);

/// <summary>One thing somebody still needs, why, and where it is next offered; null where it is not offered yet.</summary>
public sealed record Need(string What, string Why, Offer? Next);

/// <summary>What somebody has and needs for a certificate: content by unit, not by evening; a test; and the certificate with its scope once all is there.</summary>
public static class Needs
{
    /// <summary>Everything still needed on a day; nothing when the certificate can be given.</summary>
    public static IReadOnlyList<Need> Of(CertificateKind kind, string person, IReadOnlyList<Attendance> attended, IReadOnlyList<Sat> sat, IReadOnlyList<Offer> offers, DateOnly day)
    {
        var needs = new List<Need>();
        foreach (var unit in kind.Units)
        {
            var next = offers.Where(o => o.Unit == unit.Id && o.Day >= day).MinBy(o => (o.Day, o.From));
            DateOnly? last = attended.Where(a => a.Person == person && a.Unit == unit.Id && a.Day <= day).Select(a => (DateOnly?)a.Day).Max();
            if (last is not { } then) needs.Add(new(unit.Title, "not attended yet", next));
            else if (then.AddDays(unit.Days) < day) needs.Add(new(unit.Title, $"attended on {Written(then)}, good until {Written(then.AddDays(unit.Days))}", next));
        }
        if (Passed(kind, person, sat, day) is null)
        {
            var last = sat.Where(s => s.Person == person && s.Kind == kind.Id && s.Day <= day).OrderBy(s => s.Day).ThenBy(s => s.Form, StringComparer.Ordinal).LastOrDefault();
            needs.Add(new("The test", last is null ? "not sat yet" : last.Suffices ? $"passed on {Written(last.Day)}, good until {Written(last.Day.AddDays(kind.Days))}" : $"on {Written(last.Day)} {last.InWords}", null));
        }
        return needs;
    }

    /// <summary>
    /// The form somebody should sit next: one with no question that this person was asked in a test before. Beyond the forms of the edition another is made
    /// of what the person has met neither in a test nor in a drill; null, with the reason, when too few questions are left.
    /// </summary>
    /// <param name="asked">The ids of the questions this person was asked in tests.</param>
    /// <param name="drilled">The ids of those the person was asked in drills: none of them stands in a form of the edition, and none may come into another.</param>
    public static TestForm? NextForm(CertificateKind kind, Bank bank, Difficulty difficulty, string edition, IReadOnlySet<string> asked, IReadOnlySet<string> drilled, List<Rules.Ground.Finding> findings)
    {
        if (FormMaker.Parallel(kind, bank, difficulty, edition, findings) is not { } forms) return null;
        if (forms.FirstOrDefault(f => !f.Questions.Any(q => asked.Contains(q.Id))) is { } fresh) return fresh;
        var rest = new Bank(bank.Code, [.. bank.Questions.Where(q => !asked.Contains(q.Id) && !drilled.Contains(q.Id))]);
        return FormMaker.Parallel(kind with { Forms = 1 }, rest, difficulty, $"{edition} beside {asked.Count}", findings)?[0];
    }

    /// <summary>
    /// The certificate given on a day, with its scope, good as long as the test is; null while something is needed. Its division is the one that the leagues
    /// play under the kind's code, by whichever name they call it.
    /// </summary>
    public static Certificate? Award(CertificateKind kind, string person, IReadOnlyList<Attendance> attended, IReadOnlyList<Sat> sat, IReadOnlyList<Division> divisions, DateOnly day)
    {
        if (Of(kind, person, attended, sat, [], day).Count > 0 || Passed(kind, person, sat, day) is not { } passed || Division(kind, divisions) is not { } division) return null;
        return new(person, Rules.Ground.CodeAddress.Read(kind.Code)!.Game, division.Key, kind.Position, day, passed.Day.AddDays(kind.Days));
    }

    /// <summary>The certificate that stands for a kind on a day: of its game, for the position or the plate, for its division or a higher one; the one that holds longest.</summary>
    /// <param name="order">The divisions of the rule code, youngest first.</param>
    public static Certificate? Held(CertificateKind kind, IEnumerable<Certificate> certificates, IReadOnlyList<Division> divisions, IReadOnlyList<string> order, DateOnly day)
    {
        var address = Rules.Ground.CodeAddress.Read(kind.Code)!;
        int Place(string key) => divisions.FirstOrDefault(d => d.Key == key) is { } division && Rules.Ground.CodeAddress.Read(division.Code) is { } code ? order.ToList().IndexOf(code.Division) : -1;
        return certificates.Where(c => c.Game == address.Game && (c.Position == kind.Position || c.Position == Position.Plate) && c.From <= day && day <= c.Until && Place(c.Division) >= order.ToList().IndexOf(address.Division)).MaxBy(c => c.Until);
    }

    /// <summary>The division played under a kind's code, one with umpires before one without; null when nobody plays it.</summary>
    public static Division? Division(CertificateKind kind, IReadOnlyList<Division> divisions)
    {
        var address = Rules.Ground.CodeAddress.Read(kind.Code)!;
        return divisions.Where(d => Rules.Ground.CodeAddress.Read(d.Code) is { } played && played.Game == address.Game && played.Division == address.Division)
            .OrderByDescending(d => d.Crew).ThenBy(d => d.Key, StringComparer.Ordinal).FirstOrDefault();
    }

    private static Sat? Passed(CertificateKind kind, string person, IReadOnlyList<Sat> sat, DateOnly day) =>
        sat.Where(s => s.Person == person && s.Kind == kind.Id && s.Suffices && s.Day <= day && s.Day.AddDays(kind.Days) >= day).MaxBy(s => s.Day);

    private static string Written(DateOnly day) => Rules.Ground.CodeAddress.Day(day);
}
