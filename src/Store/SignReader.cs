using Microsoft.EntityFrameworkCore;
using Umpirage.District.Clinic;
using Umpirage.District.Visits;

namespace Umpirage.Store;

/// <summary>Reads what shows that something is not known yet: questions asked, wrong answers, goals of evaluations.</summary>
public static class SignReader
{
    /// <param name="from">The first day that is looked at.</param>
    /// <param name="forms">An item of a form is told by its title and the form's.</param>
    public static IReadOnlyList<Sign> Read(DistrictStore store, FormBook forms, DateOnly from)
    {
        var codes = store.Divisions.AsNoTracking().ToDictionary(d => d.Key, d => d.Code);
        var moment = from.ToDateTime(default, DateTimeKind.Utc);
        return
        [
            .. store.Questions.AsNoTracking().Where(q => q.At >= moment).AsEnumerable().Select(q => new Sign(q.Open ? SignKind.AskedAndOpen : SignKind.Asked, q.Sheet, q.Code.Split('@')[0], DateOnly.FromDateTime(q.At), q.By)),
            .. store.Answers.AsNoTracking().Where(a => !a.Right && a.At >= moment).AsEnumerable().Select(a => new Sign(SignKind.DrillError, a.Sheet, a.Code, DateOnly.FromDateTime(a.At), a.Person)),
            .. store.Evaluations.AsNoTracking().Where(e => e.On >= from).AsEnumerable().SelectMany(e => e.ToWorkOn.Select(g => new Sign(SignKind.Goal, forms.Subject(e.Form, g.About), codes.GetValueOrDefault(e.Division, e.Division), e.On, e.Umpire))),
        ];
    }
}
