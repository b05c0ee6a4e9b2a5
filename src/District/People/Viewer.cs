namespace Umpirage.District.People;

/// <summary>Somebody at the desk: a person with roles and the minors they answer for, or nobody known.</summary>
public sealed record Viewer(Person? Person, IReadOnlyList<RoleHeld> Roles, IReadOnlyList<string> Children)
{
    public static Viewer Nobody { get; } = new(null, [], []);

    public bool Is(Role role) => Roles.Any(r => r.Role == role);

    /// <summary>Whether a record of this person is the viewer's own, or that of a child the viewer answers for.</summary>
    public bool IsOwn(string person) => Person is { } self && (self.Key == person || Children.Contains(person));

    /// <summary>Whether this viewer says yes or no for somebody: an adult for themselves, a guardian for a minor.</summary>
    public bool AnswersFor(Person person) => Person is { IsMinor: false } own && (person.IsMinor ? Children.Contains(person.Key) : own.Key == person.Key);

    /// <summary>Whether the deed is open to this viewer at all, for some record.</summary>
    public bool May(Deed deed) =>
        Access.Open.Contains(deed) || (Person is not null && (Access.SignedIn.Contains(deed) || Roles.Any(r => Access.Of(r.Role, deed) > Reach.None)));

    /// <summary>Whether the deed is open for a record that belongs to a person, a team or a league; leave out what it does not belong to.</summary>
    public bool May(Deed deed, string? league = null, string? team = null, string? person = null)
    {
        if (Access.Open.Contains(deed)) return true;
        if (Person is null) return false;
        if (deed is Deed.SeeOwn or Deed.SeeContact && person is not null && IsOwn(person)) return true;
        return Roles.Any(r => Access.Of(r.Role, deed) switch
        {
            Reach.District => true,
            Reach.League => league is not null && r.League == league,
            Reach.Team => team is not null && r.Team == team,
            Reach.Self => person is not null && IsOwn(person),
            _ => false,
        });
    }

    /// <summary>The leagues a deed is confined to, or null when it reaches the whole district.</summary>
    public IReadOnlyList<string>? Leagues(Deed deed) =>
        Roles.Any(r => Access.Of(r.Role, deed) == Reach.District) ? null : [.. Roles.Where(r => Access.Of(r.Role, deed) == Reach.League).Select(r => r.League).Distinct()];
}
