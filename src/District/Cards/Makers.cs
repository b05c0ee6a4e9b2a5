using Umpirage.District.Clock;
using Umpirage.District.Gear;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Cards;

/// <summary>What a plan may ask to have worked out, by name, and the cautions that stand on cards.</summary>
internal static class Makers
{
    public static IReadOnlyDictionary<string, Func<Making, IEnumerable<CardPart>>> All { get; } = new Dictionary<string, Func<Making, IEnumerable<CardPart>>>
    {
        ["what differs"] = Differing.Of,
        ["governing code"] = m => [new CardPart.Line($"Rules: {m.Code.Stamp.Edition}", m.Code.Code.LayerNames.Count() > 1 ? $"over {string.Join(", over ", m.Code.Code.LayerNames.Reverse().Skip(1))}" : "", Strong: true)],
        ["clock times"] = ClockParts.Times,
        ["last light"] = WeatherParts.LastLight,
        ["heat steps"] = WeatherParts.Heat,
        ["globe steps"] = WeatherParts.Globe,
        ["shelter"] = _ => [new CardPart.Line(ClockWords.Shelter, Strong: true)],
        ["to note when stopped"] = _ => ClockWords.SuspendedGame.Select(n => new CardPart.Tick(n)),
        [CardPlan.OfPitchers] = PitchingParts.Staffs,
        ["limit of pitches"] = PitchingParts.Pitches,
        ["cost of a fresh arm"] = PitchingParts.Fresh,
        ["diamond on record"] = FieldParts.OnRecord,
        ["tapes"] = FieldParts.Tapes,
        ["marks"] = FieldParts.Marks,
        ["mark on the bat"] = GearParts.Mark,
        ["bat found"] = GearParts.BatFound,
        [CardPlan.OfCrew] = CrewParts.Crew,
        ["when to arrive"] = CrewParts.Arrival,
        ["protest grounds"] = ProtestParts.Grounds,
        ["game"] = m => [new CardPart.Line($"Game {m.Game.Game.Key}, {m.Game.Division.Key}"), new CardPart.Line($"{m.Game.Visitor.Name} at {m.Game.Home.Name}, {m.Game.Diamond.Name}, {m.Game.Game.Start.ToString("ddd d MMM yyyy H:mm", System.Globalization.CultureInfo.InvariantCulture)}")],
    };

    public static IReadOnlyDictionary<string, string> Cautions { get; } = new Dictionary<string, string>
    {
        ["arms"] = Advice.Always, ["gear"] = GearSheet.Caution, ["lightning"] = Clock.Cautions.Storm, ["heat"] = Clock.Cautions.Heat, ["dark"] = Clock.Cautions.Dark,
    };
}
