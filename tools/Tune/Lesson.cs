using Umpirage.Finder;

namespace Umpirage.Tune;

/// <summary>What a lesson is made from, and whether all facts it states are listed.</summary>
internal enum Source { Asked, Play, Sheet, Unrelated }

/// <summary>A sentence with what is to be learned from it, and the model's numbers for its pieces below the layers that are tuned.</summary>
/// <param name="Subject">The last one is talk of other things.</param>
/// <param name="Facts">For each fact its value as a bit; nothing where it is not stated, several where it is open.</param>
/// <param name="Complete">Whether a fact that is not listed is not stated; otherwise nobody knows.</param>
/// <param name="Pieces">The word each piece is of; -1 for what stands between words.</param>
internal sealed record Lesson(Source Source, int Subject, Utterance Said, ulong[] Facts, bool Complete, int[] Pieces, Half[] Below)
{
    public IReadOnlyList<Told> Told { get; init; } = [];

    /// <summary>One in ten is held out; which, hangs on the text alone.</summary>
    public bool HeldOut => Source != Source.Sheet && Mixed(Said.Text) % 10 == 0;

    private static uint Mixed(string text)
    {
        var sum = text.Aggregate(2166136261u, (s, c) => (s ^ c) * 16777619u);
        return sum ^ (sum >> 15);
    }
}

/// <summary>A fact's value and the words, first to last, that tell it.</summary>
internal readonly record struct Told(int Fact, int Value, int First, int Last);
