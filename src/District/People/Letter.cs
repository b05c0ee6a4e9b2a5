namespace Umpirage.District.People;

/// <summary>
/// A message and those it goes to. It cannot be addressed to a minor: for a minor it goes to every guardian and to a second adult who is not one,
/// so that nobody writes alone (common practice, no source).
/// </summary>
public sealed record Letter
{
    private Letter() { }

    public IReadOnlyList<Person> To { get; private init; } = [];
    public IReadOnlyList<Person> Copy { get; private init; } = [];
    /// <summary>Whom it is about when that is not the one it goes to.</summary>
    public IReadOnlyList<Person> About { get; private init; } = [];

    /// <summary>A letter to these people, or null with every reason why not.</summary>
    public static Letter? For(IReadOnlyList<Person> people, Person writer, Person? second, Func<Person, IReadOnlyList<Person>> guardians, List<FieldFault> faults)
    {
        var before = faults.Count;
        var minors = people.Where(p => p.IsMinor).ToList();
        var to = people.Where(p => !p.IsMinor).ToList();
        foreach (var minor in minors)
        {
            var adults = guardians(minor).Where(g => !g.IsMinor).ToList();
            if (adults.Count == 0) faults.Add(new("to", minor.ListName, "a minor with a guardian on record; add the guardian first"));
            else if (adults.All(g => g.Key == writer.Key)) faults.Add(new("to", minor.ListName, "a minor with a guardian who is not the writer; somebody else has to write"));
            to.AddRange(adults);
            if (writer.IsMinor) faults.Add(new("from", writer.ListName, "an adult, when a minor is written to"));
            if (second is null || second.IsMinor || second.Key == writer.Key || adults.Any(g => g.Key == second.Key))
                faults.Add(new("second adult", second?.ListName ?? "", "an adult who is neither the writer nor a guardian"));
        }
        if (people.Count == 0) faults.Add(new("to", "", "at least one person"));
        to = [.. to.DistinctBy(p => p.Key)];
        // a copy that reaches nobody is none
        if (minors.Count > 0 && second is { Mail: null, Phone: null, IsMinor: false }) faults.Add(new("second adult", second.ListName, "somebody with a phone or mail on record"));
        foreach (var person in to.Where(p => p.Mail is null && p.Phone is null)) faults.Add(new("to", person.ListName, "somebody with a phone or mail on record"));
        if (faults.Count > before) return null;
        return new() { To = to, Copy = minors.Count > 0 ? [second!] : [], About = minors };
    }
}
