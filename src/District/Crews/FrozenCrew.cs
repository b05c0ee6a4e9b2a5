namespace Umpirage.District.Crews;

/// <summary>A game whose crew no search touches: it is changed by hand only.</summary>
/// <param name="At">UTC.</param>
public sealed record FrozenCrew(string Game, DateTime At);
