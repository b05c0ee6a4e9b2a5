namespace Umpirage.District.Clinic;

/// <summary>The signs of one kind for one subject: how many, of how many people, from when to when, under whose codes, and what they weigh together.</summary>
public sealed record Evidence(SignKind Kind, int Count, int People, DateOnly First, DateOnly Last, IReadOnlyList<(string Code, int Count)> Codes, double Weight);

/// <summary>A subject that a clinic could teach, with what speaks for it, the heaviest first.</summary>
public sealed record Topic(string Subject, double Weight, IReadOnlyList<Evidence> Evidence);

/// <summary>Weighs what the next clinic should teach: questions asked, drill errors and evaluation goals by subject, newer ones heavier.</summary>
public static class NextClinic
{
    /// <summary>Subjects with any weight on a day, the heaviest first.</summary>
    public static IReadOnlyList<Topic> Of(Weights weights, IReadOnlyCollection<Sign> signs, DateOnly day) =>
    [
        .. signs.Where(s => s.On <= day && s.On > day.AddDays(-weights.LooksBack)).GroupBy(s => s.Subject).Select(subject =>
        {
            List<Evidence> evidence = [.. subject.GroupBy(s => s.Kind).Select(kind => Told(weights, kind.Key, [.. kind], day)).OrderByDescending(e => e.Weight).ThenBy(e => e.Kind)];
            return new Topic(subject.Key, evidence.Sum(e => e.Weight), evidence);
        }).Where(t => t.Weight > 0).OrderByDescending(t => t.Weight).ThenBy(t => t.Subject, StringComparer.Ordinal),
    ];

    private static Evidence Told(Weights weights, SignKind kind, IReadOnlyList<Sign> signs, DateOnly day)
    {
        // of one person the newest few count; all of them are told
        var counted = signs.GroupBy(s => s.By).SelectMany(by => by.OrderByDescending(s => s.On).Take(weights.MostByOne));
        return new(kind, signs.Count, signs.Select(s => s.By).Distinct().Count(), signs.Min(s => s.On), signs.Max(s => s.On),
            [.. signs.CountBy(s => s.Code).OrderByDescending(c => c.Value).ThenBy(c => c.Key, StringComparer.Ordinal).Select(c => (c.Key, c.Value))],
            counted.Sum(s => weights.Of[kind] * Math.Pow(0.5, (double)(day.DayNumber - s.On.DayNumber) / weights.HalvesAfter)));
    }
}
