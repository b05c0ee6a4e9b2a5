using Umpirage.District.People;

namespace Umpirage.District.Clinic;

/// <summary>Somebody attended a content unit.</summary>
public sealed record Attendance(string Person, string Unit, DateOnly Day);

/// <summary>A content unit is offered on a day at a place.</summary>
public sealed record Offer(string Unit, DateOnly Day, string Place);

/// <summary>Somebody sat a form of a test, and how many answers were right.</summary>
public sealed record Sat(string Person, string Kind, string Form, int Right, DateOnly Day);

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
            var next = offers.Where(o => o.Unit == unit.Id && o.Day >= day).MinBy(o => o.Day);
            DateOnly? last = attended.Where(a => a.Person == person && a.Unit == unit.Id && a.Day <= day).Select(a => (DateOnly?)a.Day).Max();
            if (last is not { } then) needs.Add(new(unit.Title, "not attended yet", next));
            else if (then.AddDays(unit.Days) < day) needs.Add(new(unit.Title, $"attended on {Written(then)}, good until {Written(then.AddDays(unit.Days))}", next));
        }
        if (Passed(kind, person, sat, day) is null)
        {
            var best = sat.Where(s => s.Person == person && s.Kind == kind.Id && s.Day <= day).MaxBy(s => s.Right);
            needs.Add(new("The test", best is null ? "not sat yet" : $"{best.Right} of {kind.Length} right on {Written(best.Day)}; {kind.Needed} are needed", null));
        }
        return needs;
    }

    /// <summary>The form somebody should sit next: one that person has not seen; null when all have been seen.</summary>
    public static TestForm? NextForm(CertificateKind kind, string person, IReadOnlyList<Sat> sat, IReadOnlyList<TestForm> forms) =>
        forms.FirstOrDefault(f => !sat.Any(s => s.Person == person && s.Kind == kind.Id && s.Form == f.Id));

    /// <summary>The certificate, with its scope, from the day on which the last thing was there; null while something is needed.</summary>
    public static Certificate? Award(CertificateKind kind, string person, IReadOnlyList<Attendance> attended, IReadOnlyList<Sat> sat, DateOnly day)
    {
        if (Of(kind, person, attended, sat, [], day).Count > 0 || Passed(kind, person, sat, day) is not { } passed) return null;
        var address = Rules.Ground.CodeAddress.Read(kind.Code)!;
        return new(person, address.Game, address.Division, kind.Position, passed.Day, passed.Day.AddDays(kind.Days));
    }

    private static Sat? Passed(CertificateKind kind, string person, IReadOnlyList<Sat> sat, DateOnly day) =>
        sat.Where(s => s.Person == person && s.Kind == kind.Id && s.Right >= kind.Needed && s.Day <= day && s.Day.AddDays(kind.Days) >= day).MaxBy(s => s.Day);

    private static string Written(DateOnly day) => Rules.Ground.CodeAddress.Day(day);
}
