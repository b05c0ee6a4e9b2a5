namespace Umpirage.District.Calendar;

public enum BlackoutOf { District, League, Team, Park, Diamond }

/// <summary>Days on which nothing is played, both included: of the whole district, a league, a team, a park or a diamond. A closed field is one, too.</summary>
/// <param name="Of">The key of what is closed; the district's is "district".</param>
public sealed record Blackout(BlackoutOf Kind, string Of, DateOnly From, DateOnly Until, string Reason)
{
    public bool On(DateOnly day) => From <= day && day <= Until;
}
