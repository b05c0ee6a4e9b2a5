namespace Umpirage.Finder;

/// <summary>Where an example comes from.</summary>
internal enum Origin : byte { Asked, Play, Sheet }

/// <summary>Something said of a subject: a question that was asked, the situation of a play, or a sentence of the sheet itself.</summary>
/// <param name="Facts">For each fact of the subject the values it may have, as bits; nothing where the example says nothing.</param>
internal sealed record Example(int Subject, Origin Origin, Utterance Said, ulong[] Facts)
{
    public AskedQuestion? Asked { get; init; }
}
