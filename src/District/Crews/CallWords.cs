using System.Globalization;

namespace Umpirage.District.Crews;

/// <summary>Messages about a crew that is called up, ready to send. To whom they may go is People's to say (Letter).</summary>
public static class CallWords
{
    private static string Clock(DateTime time) => time.ToString("H:mm", CultureInfo.InvariantCulture);

    public static string Subject(CrewGame game) => string.Create(CultureInfo.InvariantCulture, $"Umpire for {game.Start:ddd d MMM H:mm}, {game.Diamond.Name}");

    /// <summary>To somebody who is called; of a minor it speaks to the guardian.</summary>
    public static string ToUmpire(CrewGame game, string place, CrewPerson who, DateTime? arrives)
    {
        var begin = who.IsMinor ? $"You answer for {who.Name}. May {who.Person.Given} take {CrewWords.PlaceWord(place)}" : $"{who.Person.Given}, can you take {CrewWords.PlaceWord(place)}";
        var there = arrives is { } at ? $" As we reckon it, there at {Clock(at)}." : "";
        return string.Create(CultureInfo.InvariantCulture, $"{begin} on {game.Start:ddd d MMM} at {Clock(game.Start)}? {game.Division.Key}, {game.Visitor.Name} at {game.Home.Name}, {game.Diamond.Name}.{there} Please answer yes or no.");
    }

    /// <summary>To the league: who was called, and how the game begins.</summary>
    public static string ToLeague(CallUp call)
    {
        var game = call.Game;
        var lines = new List<string> { string.Create(CultureInfo.InvariantCulture, $"{game.Division.Key}, {game.Visitor.Name} at {game.Home.Name}, {game.Diamond.Name}, {game.Start:ddd d MMM H:mm}: the crew is missing.") };
        lines.AddRange(call.Called.Select(c => $"Called for {CrewWords.PlaceWord(c.Place)}: {c.Who.Person.Name}{(c.Who.Arrives is { } at ? $", there at {Clock(at)}" : "")}."));
        lines.AddRange(call.StillOpen.Select(p => $"Nobody yet for {CrewWords.PlaceWord(p)}."));
        lines.AddRange(Beginning(call));
        return string.Join(' ', lines);
    }

    /// <summary>How the game begins when not everybody is there at its time.</summary>
    public static IEnumerable<string> Beginning(CallUp call)
    {
        if (call.StartsLate is { } late) yield return $"The game can begin at {Clock(late)}, when the plate umpire is there.";
        if (call.OneUmpireUntil is { } until) yield return $"Start with one-umpire mechanics; two umpires from {Clock(until)}.";
        else if (call.StartsLate is null && call.Called.Any(c => c.Place == CrewPlace.Plate) && call.StillOpen.Count > 0 && call.StillOpen.Count == call.Game.Division.Crew - 1) yield return "One umpire alone: one-umpire mechanics.";
    }
}
