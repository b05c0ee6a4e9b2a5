using Microsoft.EntityFrameworkCore;
using Umpirage.District.Clinic;
using Umpirage.District.Visits;

namespace Umpirage.Store;

/// <summary>Reads what shows that something is not known yet: questions asked, wrong answers, goals of evaluations.</summary>
public static class SignReader
{
    /// <param name="forms">An item of a form is told by its title and the form's.</param>
    public static IReadOnlyList<Sign> Read(DistrictStore store, FormBook forms)
    {
        var codes = store.Divisions.AsNoTracking().ToDictionary(d => d.Key, d => d.Code);
        return
        [
            .. store.Questions.AsNoTracking().AsEnumerable().Select(q => new Sign(q.Open ? SignKind.AskedAndOpen : SignKind.Asked, q.Sheet, q.Code.Split('@')[0], DateOnly.FromDateTime(q.At), q.By)),
            .. store.Answers.AsNoTracking().Where(a => !a.Right).AsEnumerable().Select(a => new Sign(SignKind.DrillError, a.Sheet, a.Code, DateOnly.FromDateTime(a.At), a.Person)),
            .. store.Evaluations.AsNoTracking().AsEnumerable().SelectMany(e => e.ToWorkOn.Select(g => new Sign(SignKind.Goal, forms.Subject(e.Form, g.About), codes.GetValueOrDefault(e.Division, e.Division), e.On, e.Umpire))),
        ];
    }
}
