using Umpirage.Rules.Games;

namespace Umpirage.Rules.Calls;

/// <summary>What happened on the field as somebody wrote it: pitches, and the play they led to, if any.</summary>
public sealed record WrittenPlay(IReadOnlyList<Pitched> Pitches, Played? Play)
{
    public static WrittenPlay None { get; } = new([], null);

    /// <summary>The game with the pitches counted; null with the reasons when they cannot have been thrown.</summary>
    public Game? AfterPitches(Game game, List<string> reasons)
    {
        foreach (var pitch in Pitches)
        {
            if (Scorekeeper.Apply(game, pitch, reasons) is not { } next) return null;
            game = next;
        }
        return game;
    }
}
