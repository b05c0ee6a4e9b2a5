using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews;

/// <summary>How firmly a constraint holds. Safety never bends and cannot be saved against; a rule bends only by hand; a wish is weighed.</summary>
public enum Hold { Safety, Rule, Wish }

/// <summary>A constraint that a place of a plan does not keep: what was found and what is allowed, in words, and where the number comes from.</summary>
/// <param name="Passing">It passes with time: later that day it would no longer hold.</param>
public sealed record Breach(string Constraint, Hold Hold, string Game, string Place, string Person, string Said, Citation Source, bool Passing = false)
{
    public string Named => $"{Constraint}: {Said}";
    public string InWords => $"{Said} ({Source})";
}
