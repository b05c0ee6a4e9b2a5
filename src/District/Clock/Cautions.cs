namespace Umpirage.District.Clock;

/// <summary>What is said beside every answer on which somebody's health may hang. One place, so that no answer is without it.</summary>
public static class Cautions
{
    public const string Storm =
        "Thunder that is heard is near enough to strike. No wait, forecast or map makes a field free of danger; a site, an official or emergency services may stop play sooner and keep it stopped longer, never shorter.";

    public const string Heat =
        "A number never makes heat harmless. Local rules and medical advice come first; watch players, catchers and the crew, and take anybody unwell out of the heat at once. Confusion or collapse is an emergency.";

    public const string Dark =
        "Sunset is for a level horizon at sea level and a clear sky; trees, hills and clouds bring the dark sooner. The umpire stops when the ball can no longer be followed, whatever the clock says.";

    public const string Advice = "Advice from entered facts and a stated edition; the printed rule book and local authority rule.";
}
