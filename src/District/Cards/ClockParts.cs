using System.Globalization;
using Umpirage.District.Calendar;

namespace Umpirage.District.Cards;

/// <summary>The clock of the game as times of the day.</summary>
internal static class ClockParts
{
    private const string Sheet = "time limit";

    public static IEnumerable<CardPart> Times(Making m)
    {
        if (m.Sheet(Sheet) is not { } limit) yield break;
        var start = m.Game.Game.Start;
        // a game that the first pitch starts has no time of the day before it
        var begins = limit.Word("clock starts at") == "scheduled time" ? "" : $", if {limit.Word("clock starts at")} is at {At(start)}";
        if (limit.Number("no new inning after") is { } last) yield return new CardPart.Key($"No new inning after{begins}", At(start.AddMinutes(last)));
        if (limit.Number("hard stop after") is { } hard) yield return new CardPart.Key($"Play stops, even in mid-inning{begins}", At(start.AddMinutes(hard)));
    }

    internal static string At(DateTime time) => time.ToString("H:mm", CultureInfo.InvariantCulture);
}
