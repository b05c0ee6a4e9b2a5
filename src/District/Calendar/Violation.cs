namespace Umpirage.District.Calendar;

/// <summary>A game put at another time or on another diamond.</summary>
public sealed record Mend(string Game, string Diamond, DateTime Start);

/// <summary>
/// One thing wrong in a schedule: the games it is about, in the order of play, what was found and what is allowed in words, and where that stands.
/// What is not <paramref name="Hard"/> is a wish.
/// </summary>
/// <param name="Constraint">The constraint's name.</param>
/// <param name="Of">The team, diamond or park it is about, by key.</param>
/// <param name="Mend">The least change that mends it, once it was looked for and found.</param>
public sealed record Violation(string Constraint, bool Hard, string Of, IReadOnlyList<ScheduledGame> About, string Found, string Allowed, string Source, Mend? Mend = null)
{
    /// <summary>The same for the same thing wrong with the same games at the same times.</summary>
    public string Key => $"{Constraint}/{Of}/{string.Join(',', About.Select(g => $"{g.Key}@{g.Diamond}@{g.Start:yyyyMMddHHmm}"))}";

    /// <summary>When it begins to matter: the start of the last of the games.</summary>
    public DateTime At => About.Max(g => g.Start);

    public bool Names(string game) => About.Any(g => g.Key == game);
}
