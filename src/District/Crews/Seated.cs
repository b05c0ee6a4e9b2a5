namespace Umpirage.District.Crews;

/// <summary>Somebody in a place of a game's crew.</summary>
public sealed record Seated(CrewGame Game, string Place, CrewPerson Person)
{
    public bool IsPlate => Place == CrewPlace.Plate;
}
