namespace Umpirage.District.Crews;

/// <summary>Now, and how far away people said they are, in minutes; who said nothing is reckoned from the last game or from home.</summary>
/// <param name="Of">Those who are asked at all; none asks everybody.</param>
public sealed record Calling(DateTime? Now = null, IReadOnlyDictionary<string, int>? Minutes = null, IReadOnlyCollection<string>? Of = null);

public enum Standby { Legal, Moved, Backup, No }

/// <summary>Somebody for a hole: when they could be there, and what it would break.</summary>
/// <param name="Standing">Legal; legal once moved from another place; a backup who could come later against a rule that passes; or not.</param>
/// <param name="Minutes">To arrive, from now or before the game; nothing when it is not known.</param>
/// <param name="Arrives">Never before now; nothing when it is not known or nobody said what time it is.</param>
/// <param name="Opens">Places that would be left open.</param>
/// <param name="Later">What the person has later that day.</param>
public sealed record Substitute(
    CrewPerson Person, Standby Standing, int? Minutes, DateTime? Arrives, IReadOnlyList<Breach> Reasons, IReadOnlyList<Breach> Wishes, IReadOnlyList<Seated> Opens, IReadOnlyList<DayGame> Later, double WeekShare)
{
    public bool InTime(CrewGame game) => Arrives is null || Arrives <= game.Start;
}
