using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews;

/// <summary>Something that crews have to keep: a name, the sentence that people are shown, and how firmly it holds.</summary>
/// <param name="Passing">What it finds passes with time.</param>
public abstract record CrewConstraint(string Name, string Sentence, Hold Hold, bool Passing = false)
{
    /// <summary>Where the sentence comes from; numbers bring their own source from the sheets.</summary>
    public abstract Citation Source { get; }

    /// <summary>What is wrong with one place of a plan; nothing when the constraint is kept.</summary>
    public abstract IEnumerable<Breach> Find(CrewPlan plan, Seated seat);

    protected Breach Broken(Seated seat, string said, Citation? source = null, Hold? hold = null) =>
        new(Name, hold ?? Hold, seat.Game.Key, seat.Place, seat.Person.Key, said, source ?? Source, Passing);

    protected static Citation Common(string source) => new(source, Standing.CommonPractice);
}
