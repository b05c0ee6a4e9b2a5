using Umpirage.Rules.Ground;

namespace Umpirage.District.People;

/// <summary>
/// Somebody of the district. A minor has no phone and no mail here: whoever writes to a minor writes to the guardians (see <see cref="Letter"/>).
/// The only way to make one is <see cref="Of"/>, which refuses a minor with an address of their own.
/// </summary>
public sealed record Person
{
    private Person() { }

    public string Key { get; private init; } = "";
    public string Given { get; private init; } = "";
    public string Family { get; private init; } = "";
    public AgeBand Band { get; private init; }
    /// <summary>The day on which a minor comes of age; null for an adult.</summary>
    public DateOnly? AdultOn { get; private init; }
    public string? League { get; private init; }
    public string? Phone { get; private init; }
    public string? Mail { get; private init; }

    /// <summary>A person, or null with every reason why not.</summary>
    public static Person? Of(string key, string given, string family, AgeBand band, DateOnly? adultOn, string? league, string? phone, string? mail, List<FieldFault> faults)
    {
        var before = faults.Count;
        if (key == "") faults.Add(new("person", "", "a short key of letters, digits and dashes"));
        if (given == "") faults.Add(new("given name", "", "a name"));
        if (band.IsMinor())
        {
            if (adultOn is null) faults.Add(new("adult on", "", "for a minor, the day on which they come of age"));
            if (phone is not null) faults.Add(new("phone", "a number", "nothing: a minor is reached through a guardian"));
            if (mail is not null) faults.Add(new("mail", "an address", "nothing: a minor is reached through a guardian"));
        }
        else if (adultOn is not null) faults.Add(new("adult on", CodeAddress.Day(adultOn.Value), "nothing for an adult"));
        if (mail is not null && (mail.Count(c => c == '@') != 1 || mail[0] == '@' || mail[^1] == '@' || mail.Any(char.IsWhiteSpace))) faults.Add(new("mail", mail, "an address like name@place"));
        return faults.Count > before ? null : new() { Key = key, Given = given, Family = family, Band = band, AdultOn = adultOn, League = league, Phone = phone, Mail = mail };
    }

    /// <summary>Whether to be treated as a minor on a day: until the day of coming of age, and always while nobody has recorded that it came.</summary>
    public bool IsMinor => Band.IsMinor();

    /// <summary>The name on lists and sheets: a minor's family name is cut to its first letter.</summary>
    public string ListName => Family == "" ? Given : IsMinor ? $"{Given} {Family[0]}." : $"{Given} {Family}";
}
