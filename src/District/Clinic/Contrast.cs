using Umpirage.Rules.Codes;
using Umpirage.Rules.Plays;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>Why one code rules as it does: the rule, its reason, the source.</summary>
public sealed record RuledBy(string Rule, string Title, string? Reason, string Source, bool Verified)
{
    internal static RuledBy Of(CodeSheet under, BoundClause clause, int decision)
    {
        var citation = clause.Then.FirstOrDefault(s => s.Decision == decision)?.Value.Parameter is { } parameter ? under.Values[parameter].Citation : under.Code.Cite(clause.Clause);
        return new(clause.Id, Because.Fill(under, clause.Clause.Title), clause.Clause.Reason is { } reason ? Because.Fill(under, reason) : null, citation.ToString(), citation.Verified);
    }

    /// <summary>The reason, or the rule's own title where it gives none, as a sentence.</summary>
    public string Why => Words.Upper(Reason ?? Title) + (Reason is null ? "." : "");
}

/// <summary>One decision of the same play under two codes.</summary>
public sealed record Turn(string Decision, string Ask, string Here, string There, RuledBy HereBy, RuledBy ThereBy);

/// <summary>
/// The second play of a pair: it differs from the first in one fact and is ruled otherwise. <paramref name="First"/> and <paramref name="Second"/> tell that
/// fact in the two plays; <paramref name="Turns"/> are the same decisions as in the first play.
/// </summary>
public sealed record Twin(string First, string Second, IReadOnlyList<string> Given, IReadOnlyList<Turn> Turns)
{
    /// <summary>Whether both codes rule the second play alike.</summary>
    public bool Alike => Turns.All(t => t.Here == t.There);
}

/// <summary>
/// A play that two codes rule differently, told in sentences with nothing but what matters, and its <paramref name="Twin"/>, where a single fact makes
/// one. <paramref name="Lines"/> are the lines of the computed crossover it stands for; none in a pair of the learnt code alone, where a fact turns a rule of a chosen subject.
/// </summary>
public sealed record Contrast(
    string Key, string Sheet, string Group, string About, string When, IReadOnlyList<string> Told, IReadOnlyList<string> Given, IReadOnlyList<Turn> Turns, Twin? Twin, IReadOnlyList<RulingDifference> Lines, string? Caution)
{
    /// <summary>How little the pair teaches: 0 when one fact turns the ruling of the code to be learnt and leaves that of the code known as it was; 2 without a second play.</summary>
    internal int Weakness => Twin is null ? 2 : Turns.Zip(Twin.Turns).All(p => p.First.Here == p.Second.Here) ? 0 : 1;

    /// <summary>Whether it belongs to the learnt code alone and says nothing of the other.</summary>
    public bool Alone => Lines.Count == 0;

    /// <summary>The first ruling, under both codes where it is about both.</summary>
    public string InShort => Alone ? Turns[0].There : $"{Turns[0].Here} / {Turns[0].There}";

    /// <summary>The play as one text.</summary>
    public string Situation => string.Join(' ', Told);

    /// <summary>What the lesson says of it: when this changes, what an instructor wrote about it has to be looked at again.</summary>
    public string Print => Stamp.Of(string.Join("|", Turns.Select(t => $"{t.Decision}={t.Here}/{t.There};{t.HereBy.Rule};{t.ThereBy.Rule};{t.HereBy.Source};{t.ThereBy.Source}")));
}
