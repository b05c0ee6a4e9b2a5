using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>The places of a crew, as they are called on record.</summary>
public static class CrewPlace
{
    public const string Plate = "plate", Base = "base", YouthBase = "youth base";

    /// <summary>Every place there may be, the most needed first.</summary>
    public static IReadOnlyList<string> All { get; } = [Plate, Base, "base 2", "base 3", YouthBase];

    public static Position PositionOf(string place) => place == Plate ? Position.Plate : Position.Base;

    /// <summary>The places of a division's games: as many umpires as required, and a youth on the bases where one is wanted.</summary>
    public static IReadOnlyList<string> Of(Division division) => [.. All.Take(Math.Min(division.Crew, All.Count - 1)), .. division.YouthBase ? [YouthBase] : (string[])[]];

    /// <summary>A place that the division requires; the others are wanted.</summary>
    public static bool IsRequired(string place) => place != YouthBase;
}
