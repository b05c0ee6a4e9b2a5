namespace Umpirage.District.Clinic;

/// <summary>Where it showed that something is not known yet.</summary>
public enum SignKind { Asked, AskedAndOpen, DrillError, Goal }

/// <summary>One sign that a subject should be taught: what kind, on which subject, under whose code (a code's address, or a division as it is played), when, and by whom.</summary>
/// <param name="Subject">A subject of the rules, or an item that evaluators watch.</param>
public sealed record Sign(SignKind Kind, string Subject, string Code, DateOnly On, string By)
{
    public static string Word(SignKind kind) => kind switch
    {
        SignKind.Asked => "asked",
        SignKind.AskedAndOpen => "asked and open",
        SignKind.DrillError => "drill error",
        SignKind.Goal => "goal",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
