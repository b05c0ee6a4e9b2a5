using System.Text.Json.Serialization;

namespace Umpirage.District.Clock;

[JsonConverter(typeof(JsonStringEnumConverter<PlayState>))]
public enum PlayState { NotStarted, Playing, Stopped, StoppedForGood }

/// <summary>The dark at one moment.</summary>
/// <param name="At">The earlier of the site's own cut-off and sunset; null on a lit field without a cut-off, or where the sun does not set that day.</param>
/// <param name="AllDay">True where the sun does not rise that day and the field is not lit.</param>
/// <param name="Minutes">Whole minutes to it, from the moment that was asked; negative when it is past.</param>
/// <param name="MinutesAtRestart">The same from the earliest restart.</param>
public sealed record DarkReading(Moment? At, string Because, bool AllDay, int? Minutes, int? MinutesAtRestart);

/// <summary>What becomes of the game if it is stopped for good at this moment: the sheet 'regulation game', and what that means for the score.</summary>
/// <param name="Official">Whether enough was played: yes, no, or both when something is not known.</param>
/// <param name="Game">The outcomes still possible.</param>
public sealed record StopOutcome(IReadOnlyList<string> Official, IReadOnlyList<string> Game, IReadOnlyList<string> Score, SheetRuling Ruling);

/// <summary>
/// The limits of the game's clock, in whole minutes. <paramref name="LastNewInning"/> is the last moment at which a new inning may begin, and
/// <paramref name="HardStop"/> the one at which play stops; both are null without a limit, before the start and after the end.
/// </summary>
/// <param name="Played">Minutes between the first pitch and now without any stop.</param>
/// <param name="OnClock">Minutes as the code counts them.</param>
/// <param name="Left">Minutes until no new inning may begin; negative when the limit is past.</param>
/// <param name="OneMoreInning">True where one more inning is played after the one in which the limit is reached; the limit then bars the innings after that.</param>
/// <param name="Assuming">What is assumed of a stop that still lasts.</param>
public sealed record LimitReading(Moment? Started, int Played, int OnClock, int? NoNewInningAfter, bool OneMoreInning, int? Left, Moment? LastNewInning, Moment? HardStop, string? Assuming, bool OnlyThisInningAtRestart, SheetRuling? Ruling);

/// <summary>Everything a game's clock says at one moment. The words in it are made in one place, <see cref="ClockWords"/>.</summary>
public sealed record ClockReading(
    string Code, Moment At, PlayState State, string Half, string? Score, LimitReading Limit, StormReading Storm, DarkReading Dark, StopOutcome IfStoppedNow, IReadOnlyList<HeatAnswer> Heat,
    IReadOnlyList<string> Alerts, IReadOnlyList<string> DoNow, IReadOnlyList<string> ToNote, IReadOnlyList<string> Sources, IReadOnlyList<string> Cautions);
