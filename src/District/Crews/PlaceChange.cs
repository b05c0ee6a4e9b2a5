namespace Umpirage.District.Crews;

/// <summary>A place that is not as people were last told.</summary>
/// <param name="Was">What they were told; nothing when the game was never published.</param>
public sealed record PlaceChange(PublishedPlace? Was, PublishedPlace Now)
{
    public string Game => Now.Game;
    public string Place => Now.Place;
    public string? From => Was?.Person;
    public string? To => Now.Person;

    /// <summary>The same person at another time or on another diamond.</summary>
    public bool Moves => From is not null && From == To && (Was!.Start != Now.Start || Was.Diamond != Now.Diamond);

    /// <summary>Somebody has to hear of it.</summary>
    public bool Concerns => From != To || Moves;

    /// <summary>People were told something else, or nothing yet.</summary>
    public bool Untold => Concerns || Was is null;
}
