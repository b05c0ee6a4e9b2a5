using System.Globalization;
using Umpirage.Rules.Games;

namespace Umpirage.Rules.Records;

/// <summary>A game read from a public event file: its id, who played, and its events in our own words.</summary>
public sealed record RecordedGame(string Id, string Visitors, string Home, IReadOnlyList<GameEvent> Events, IReadOnlyList<string> Faults)
{
    /// <summary>For each event the inning and side the file gives it, where it gives one: what the replay has to arrive at.</summary>
    public required IReadOnlyList<Half?> Marks { get; init; }
    /// <summary>The address of the code it was played under; empty when the record does not say.</summary>
    public string Code { get; init; } = "";
}

/// <summary>A half-inning: which inning, and the side at bat.</summary>
public sealed record Half(int Inning, Side Side);

/// <summary>
/// Reads public play-by-play event files (lines id, info, start, sub, play, radj). Data in that form obtained from Retrosheet is copyrighted
/// by it and may be used with its notice; none lies in this project.
/// </summary>
public static class EventFile
{
    private static readonly string[] Positions =
        ["", "pitcher", "catcher", "first base", "second base", "third base", "shortstop", "left field", "center field", "right field", "designated hitter", "pinch hitter", "pinch runner"];

    /// <summary>Games in the order of the file. A play that cannot be read is a fault of its game; reading goes on.</summary>
    public static IEnumerable<RecordedGame> Read(TextReader text)
    {
        Builder? game = null;
        for (var number = 1; text.ReadLine() is { } line; number++)
        {
            if (line.StartsWith("id,", StringComparison.Ordinal))
            {
                if (game is not null) yield return game.Done();
                game = new(line[3..].Trim());
            }
            else game?.Line(line, number);
        }
        if (game is not null) yield return game.Done();
    }

    private sealed class Builder(string id)
    {
        private readonly List<GameEvent> events = [];
        private readonly List<Half?> marks = [];
        private readonly List<string> faults = [];
        private string visitors = "", home = "";

        public RecordedGame Done() => new(id, visitors, home, events, faults) { Marks = marks };

        private void Add(GameEvent happened, Half? mark = null)
        {
            events.Add(happened);
            marks.Add(mark);
        }

        public void Line(string line, int number)
        {
            var comma = line.IndexOf(',');
            if (comma < 0) return;
            switch (line.AsSpan(0, comma))
            {
                case "info":
                    if (line.StartsWith("info,visteam,", StringComparison.Ordinal)) visitors = line[13..].Trim();
                    else if (line.StartsWith("info,hometeam,", StringComparison.Ordinal)) home = line[14..].Trim();
                    break;
                case "start" or "sub":
                    var who = line.Split(',');
                    if (who.Length < 6 || !Int(who[3], out var side) || !Int(who[4], out var spot) || !Int(who[5], out var position) || position is < 0 or > 12 || side is < 0 or > 1)
                        faults.Add($"line {number}: cannot read '{line}'");
                    else Add(new Entered((Side)side, spot, who[1], Positions[position], number));
                    break;
                case "play":
                    // only the first six commas part fields
                    var fields = line.Split(',', 7);
                    if (fields.Length < 7 || !Int(fields[1], out var inning) || !Int(fields[2], out side) || side is < 0 or > 1) { faults.Add($"line {number}: cannot read '{line}'"); break; }
                    if (PlayCode.Read(fields[3], fields[6], number) is { } play) Add(play.TurnDone || play.Moves.Count > 0 ? play : new CameToBat(fields[3], number), new(inning, (Side)side));
                    else faults.Add($"line {number}: cannot read the play '{fields[6]}'");
                    break;
                case "radj":
                    var adjusted = line.Split(',');
                    if (adjusted.Length >= 3 && Int(adjusted[2], out var place) && place is >= 1 and <= 3) Add(new Placed(adjusted[1], (Place)place, number));
                    else faults.Add($"line {number}: cannot read '{line}'");
                    break;
            }
        }

        private static bool Int(string text, out int value) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value);
    }
}
