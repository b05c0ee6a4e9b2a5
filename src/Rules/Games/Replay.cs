namespace Umpirage.Rules.Games;

/// <summary>How far a list of events could be followed: the game as it then stood, and, when it went wrong, where and why.</summary>
public sealed record Replayed(Game Game, int Followed, int? WrongLine, IReadOnlyList<string> Reasons)
{
    public bool Whole => WrongLine is null;
}

/// <summary>Follows a game from its first event.</summary>
public static class Replay
{
    /// <summary>Folds events into a game; stops at the first that cannot have happened and keeps what came before.</summary>
    public static Replayed Of(Game start, IEnumerable<GameEvent> events)
    {
        var (game, followed) = (start, 0);
        var reasons = new List<string>();
        foreach (var happened in events)
        {
            if (Scorekeeper.Apply(game, happened, reasons) is not { } next) return new(game, followed, happened.Line, reasons);
            (game, followed) = (next, followed + 1);
        }
        return new(game, followed, null, reasons);
    }
}
