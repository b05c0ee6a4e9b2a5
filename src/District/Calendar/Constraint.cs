namespace Umpirage.District.Calendar;

/// <summary>
/// One thing a schedule has to keep. It looks only at games that share a team, a diamond and day, or a suspended game with one another: see
/// <see cref="Schedule.Around"/>.
/// </summary>
public abstract class Constraint
{
    /// <summary>A few words, as shown and as sorted by.</summary>
    public abstract string Name { get; }

    /// <summary>One sentence for people.</summary>
    public abstract string Sentence { get; }

    /// <summary>The sheets whose rules and values it leans on.</summary>
    public abstract IReadOnlyList<string> Sheets { get; }

    /// <summary>Whether a schedule that does not keep it cannot be played.</summary>
    public virtual bool Hard => true;

    /// <summary>Everything in the schedule that breaks it, each once.</summary>
    public abstract IEnumerable<Violation> Find(Schedule schedule);

    private protected Violation Broken(string of, IReadOnlyList<ScheduledGame> about, string found, string allowed, string source) => new(Name, Hard, of, about, found, allowed, source);
}
