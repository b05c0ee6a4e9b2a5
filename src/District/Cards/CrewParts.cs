using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Cards;

/// <summary>Who umpires, when to be there, and the adult beside a minor.</summary>
internal static class CrewParts
{
    public static IEnumerable<CardPart> Crew(Making m)
    {
        if (m.Game.Crew.Count == 0) yield return new CardPart.Line("Nobody is named for this game yet.", Strong: true);
        foreach (var seat in m.Game.Crew) yield return new CardPart.Line($"{Words.Upper(seat.Place)}: {seat.Name ?? "open"}", seat.Before ?? "", Strong: true);
        if (!m.Game.Crew.Any(s => s.IsMinor)) yield break;
        yield return m.Game.Coordinator is { } adult ? new CardPart.Tick($"{adult} is here, the adult for the youth umpire, and stays throughout; the name is in the scorebook")
            : new CardPart.Note("A youth umpire is in this crew and no adult is named for the game. It does not start until one is there who coaches neither side.");
        yield return new CardPart.Line("Nobody rides alone with a youth umpire, and nobody writes to one alone: a guardian or another adult is always there.");
    }

    public static IEnumerable<CardPart> Arrival(Making m)
    {
        yield return new CardPart.Key("First pitch", m.Game.Game.Start.ToString("ddd d MMM, H:mm", CultureInfo.InvariantCulture));
        // a diamond that is alone at its park bears the park's name
        var (diamond, park) = (m.Game.Diamond.Name, m.Game.Park.Name);
        yield return new CardPart.Line($"{(diamond.StartsWith(park, StringComparison.Ordinal) ? diamond : $"{diamond}, {park}")} ({Degrees(m.Game.Park.Latitude, "N", "S")} {Degrees(m.Game.Park.Longitude, "E", "W")})");
    }

    private static string Degrees(double degrees, string plus, string minus) => $"{Math.Abs(degrees).ToString("0.0000", CultureInfo.InvariantCulture)} {(degrees < 0 ? minus : plus)}";
}
