namespace Umpirage.District.Crews;

/// <summary>A place of a crew as people were told of it, and where and when the game was then. What is told anew has a later line; only ever added to.</summary>
/// <param name="At">UTC, to the second: everything published together has the same.</param>
/// <param name="Person">Nobody: the place was open, or the game was not to be played.</param>
/// <param name="Start">The district's own clock.</param>
public sealed record PublishedPlace(string Game, string Place, DateTime At, string? Person, string Diamond, DateTime Start)
{
    /// <summary>The same as people know it, whenever they were told.</summary>
    public bool Tells(PublishedPlace other) => this with { At = other.At } == other;
}
