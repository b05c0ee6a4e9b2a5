using Microsoft.EntityFrameworkCore;
using Umpirage.District.Clinic;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>A test about to be sat by somebody: its kind, the form that is next for this person, and how well it decides.</summary>
public sealed record Exam(CertificateKind Kind, Person Person, TestForm Form, CutScore Cut)
{
    /// <summary>The exam; null with every reason.</summary>
    public static Exam? Of(DistrictStore store, Classroom classroom, Sitting sitting, string kindId, string personKey, List<FieldFault> faults)
    {
        var kind = classroom.Certificates.Find(kindId);
        if (kind is null) faults.Add(new("certificate", kindId, Words.Or([.. classroom.Certificates.Kinds.Select(k => k.Id)])));
        var person = store.People.AsNoTracking().FirstOrDefault(p => p.Key == personKey);
        if (person is null) faults.Add(new("person", personKey, "somebody on record"));
        else if (person.Key == sitting.Viewer.Person?.Key) faults.Add(new("proctor", person.ListName, "somebody else than who sits the test"));
        if (kind is null || faults.Count > 0) return null;
        var wrong = new List<string>();
        if (classroom.Bank(kind.Code, sitting.Today, wrong) is not { } bank) { faults.Add(new("code", kind.Code, string.Join("; ", wrong))); return null; }
        var met = store.Answers.AsNoTracking().Where(a => a.Person == personKey).Select(a => new { a.Question, Drill = a.Form == "" }).ToLookup(a => a.Drill, a => a.Question);
        var findings = new List<Finding>();
        if (Needs.NextForm(kind, bank, classroom.Difficulty, Classroom.Edition(sitting.Today), met[false].ToHashSet(), met[true].ToHashSet(), findings) is not { } form) { faults.Add(new("form", "none", string.Join("; ", findings.Select(f => f.Message)))); return null; }
        return new(kind, person!, form, Cutting.Of(kind, form, classroom.Difficulty));
    }
}
