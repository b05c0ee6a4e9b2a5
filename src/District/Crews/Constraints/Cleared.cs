using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>Clearances hold through the day of the game. Every kind on record has to hold, and those that the code requires have to be on record.</summary>
public sealed record Cleared() : CrewConstraint("clearance", "Clearances are valid through the game.", Hold.Safety)
{
    public const string BackgroundCheck = "background check", Awareness = "abuse-awareness course";

    public override Citation Source => Common("volunteer screening; valid through the last assigned game");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var (person, day, code) = (seat.Person, seat.Game.Day, seat.Game.Code);
        foreach (var kind in person.Clearances.GroupBy(c => c.Requirement))
            if (!kind.Any(c => c.From <= day && day <= c.Until))
                yield return Broken(seat, kind.All(c => c.Until < day) ? $"{kind.Key} ran out {CodeAddress.Day(kind.Max(c => c.Until))}" : $"{kind.Key} begins {CodeAddress.Day(kind.Where(c => c.From > day).Min(c => c.From))}");
        if (code.NeedsBackgroundCheck && !person.IsMinor && Missing(person, BackgroundCheck)) yield return Broken(seat, "no background check on record", code.SourceOf("background check of an adult"));
        if (code.NeedsAwareness && Missing(person, Awareness)) yield return Broken(seat, "no abuse-awareness course on record", code.SourceOf("abuse-awareness course"));
    }

    private static bool Missing(CrewPerson person, string requirement) => !person.Clearances.Any(c => Words.Same(c.Requirement, requirement));
}
