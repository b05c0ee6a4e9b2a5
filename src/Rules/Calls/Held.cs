using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Rules.Calls;

/// <summary>A play of the casebook held against what was published: the ruling, and the game after it where that is written.</summary>
public static class Held
{
    public static Outcome Of(Codebook book, Play play, DateOnly today)
    {
        var outcome = Casebook.Hold(book, play, today);
        if (outcome.Ruling is not { IsPossible: true } ruling || play.Before.Count == 0) return outcome;
        var findings = new List<Finding>();
        var misses = AfterCheck.Misses(play, OnTheField.Of(play, ruling, findings), findings).ToList();
        return outcome with { Misses = [.. outcome.Misses, .. findings.Select(f => f.ToString()), .. misses] };
    }
}
