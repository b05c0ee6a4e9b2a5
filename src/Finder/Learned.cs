using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>
/// What was learned from the trade's texts, once, by tools/Tune: small changes of the sentence model, and what turns its numbers into subjects
/// and facts.
/// </summary>
internal sealed record Learned
{
    /// <summary>The sum of the texts it was learned from: see <see cref="Material.Key"/>.</summary>
    public required string Key { get; init; }
    /// <summary>What was measured on the questions held out.</summary>
    public required string Figures { get; init; }
    public required IReadOnlyList<LowRank> Changes { get; init; }
    public required IReadOnlyList<LearnedSubject> Subjects { get; init; }
    public required TermBook Terms { get; init; }
    public required FactHead Facts { get; init; }
    public required Floors Floors { get; init; }
    /// <summary>The middle of the subjects' directions: what all talk of the trade has in common.</summary>
    public required float[] Middle { get; init; }

    /// <summary>What the words and their meaning say for each subject, in the subjects' order.</summary>
    public float[] Scores(Utterance said, Meaning meaning)
    {
        var scores = Subjects.Select(s => s.Bias + TensorPrimitives.Dot<float>(s.Takes, meaning.Whole)).ToArray();
        Terms.Add(said, scores);
        return scores;
    }
}

/// <summary>A subject that was learned: what its score takes from a sentence's direction, and the labels of its facts.</summary>
/// <param name="Name">Empty for talk of other things.</param>
internal sealed record LearnedSubject(string Name, float[] Takes, float Bias, IReadOnlyList<FactLabel> Labels);

/// <summary>The limits chosen on the questions held out.</summary>
/// <param name="Fit">Below this share no subject is claimed.</param>
/// <param name="Fact">A fact less likely said is left to be asked.</param>
/// <param name="Pull">How strongly a subject that was not learned is drawn by likeness to its examples.</param>
/// <param name="Start">The score such a subject starts from.</param>
internal sealed record Floors(float Fit, float Fact, float Pull, float Start);
