using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Games;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Records;

/// <summary>
/// Reads a game in our own text form, described in codes/GAMES.md: line-ups, then half-innings, a line for each batter or play. Every line
/// that cannot be read is a finding; the others still count.
/// </summary>
public sealed class GameFile
{
    private sealed record Thrown(string Words, Pitch Pitch);

    private static readonly Thrown[] Pitches =
    [
        new("ball", Pitch.Ball), new("called strike", Pitch.CalledStrike), new("strike", Pitch.CalledStrike), new("swinging strike", Pitch.SwingingStrike), new("foul", Pitch.Foul),
        new("foul bunt", Pitch.FoulBunt), new("illegal pitch", Pitch.IllegalPitch), new("no pitch", Pitch.NoPitch),
    ];

    private sealed record Result(string Words, Place To);

    private static readonly Result[] Results =
    [
        new("singles", Place.First), new("doubles", Place.Second), new("triples", Place.Third), new("homers", Place.Home), new("walks", Place.First), new("is hit by the pitch", Place.First),
        new("reaches first", Place.First), new("reaches second", Place.Second), new("reaches third", Place.Third), new("strikes out", Place.Out), new("grounds out", Place.Out),
        new("flies out", Place.Out), new("lines out", Place.Out), new("pops out", Place.Out), new("bunts out", Place.Out), new("is out", Place.Out),
    ];

    private readonly string file;
    private readonly List<Finding> findings;
    private readonly List<GameEvent> events = [];
    private readonly List<Half?> marks = [];
    private string name = "", code = "", visitors = "", home = "";
    private Side? lineup;
    private Half? half;
    private int spot;

    private GameFile(string file, List<Finding> findings) => (this.file, this.findings) = (file, findings);

    public static RecordedGame Read(string file, string text, List<Finding> findings)
    {
        var before = findings.Count;
        var reader = new GameFile(file, findings);
        foreach (var line in SourceLine.Of(text, "# ")) reader.Line(line);
        return new(reader.name == "" ? file : reader.name, reader.visitors, reader.home, reader.events, [.. findings.Skip(before).Select(f => f.ToString())]) { Marks = reader.marks, Code = reader.code };
    }

    private void Add(GameEvent happened, bool marked = true)
    {
        events.Add(happened);
        marks.Add(marked ? half : null);
    }

    private void Fault(SourceLine line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line.Number, message));

    private void Line(SourceLine line)
    {
        var text = line.Text;
        if (HalfLine(text)) return;
        if (lineup is not null && half is null && text[0] is >= '0' and <= '9') { Start(line); return; }
        var colon = text.IndexOf(':');
        if (colon <= 0) { Fault(line, $"cannot read '{line.Short}'; write 'Top 1', '#7: ball, singles; #3 to third', or another form of codes/GAMES.md"); return; }
        var (key, rest) = (text[..colon].Trim(), text[(colon + 1)..].Trim());
        switch (key)
        {
            case "Game": name = rest; return;
            case "code": code = rest; return;
            case "Visitors": (visitors, lineup, spot) = (rest, Side.Visitors, 0); return;
            case "Home": (home, lineup, spot) = (rest, Side.Home, 0); return;
        }
        if (half is null) { Fault(line, "a play stands in a half-inning; write 'Top 1' first"); return; }
        switch (key)
        {
            case "in": Change(line, half.Side, rest); break;
            case "in for the fielders": Change(line, Other(half.Side), rest); break;
            case "courtesy": if (Pair(rest, " runs for ") is var (runner, other)) Add(new CourtesyRun(other, runner, line.Number)); else Fault(line, "write 'courtesy: #21 runs for #7'"); break;
            case "placed": if (Pair(rest, " on ") is var (who, place) && Base(place) is { } at) Add(new Placed(who, at, line.Number)); else Fault(line, "write 'placed: #5 on second'"); break;
            case "conference" when rest is "defence" or "offence": Add(new Conference(rest == "defence" ? Other(half.Side) : half.Side, rest == "defence", line.Number)); break;
            case "note": Add(new Noted(rest, line.Number)); break;
            case "time": Add(new Time(false, Clock(rest), rest, line.Number)); break;
            case "play": Add(new Time(true, Clock(rest), rest, line.Number)); break;
            case "end of half-inning": Add(new Ended(false, rest, line.Number)); break;
            case "end of game": Add(new Ended(true, rest, line.Number)); break;
            default: if (key[0] == '#' && !key.Contains(' ')) Batter(line, key, rest); else Running(line, key, rest); break;
        }
    }

    private static Side Other(Side side) => side == Side.Visitors ? Side.Home : Side.Visitors;

    private bool HalfLine(string text)
    {
        var words = text.Split(' ');
        if (words.Length != 2 || words[0] is not ("Top" or "Bottom") || !int.TryParse(words[1], NumberStyles.None, CultureInfo.InvariantCulture, out var inning) || inning is < 1 or > 99) return false;
        half = new(inning, words[0] == "Top" ? Side.Visitors : Side.Home);
        return true;
    }

    private void Start(SourceLine line)
    {
        var words = line.Text.Split(' ', 3);
        if (words.Length < 2 || !int.TryParse(words[0], NumberStyles.None, CultureInfo.InvariantCulture, out var at) || at > 30 || words[1][0] != '#') { Fault(line, "a line of a batting order is '1 #7 shortstop'; 0 for one who fields only"); return; }
        if (at != 0 && at != ++spot) Fault(line, $"the batting order goes on with {spot}");
        var position = words.Length > 2 ? words[2] : "";
        var flexFor = 0;
        if (position.IndexOf(", flex for ", StringComparison.Ordinal) is > 0 and var cut)
        {
            if (at != 0 || !int.TryParse(position[(cut + 11)..], NumberStyles.None, CultureInfo.InvariantCulture, out flexFor) || flexFor is < 1 or > 30) { Fault(line, "write '0 #30 right field, flex for 4'"); return; }
            position = position[..cut];
        }
        Add(new Entered(lineup!.Value, at, words[1], position, line.Number) { FlexFor = flexFor }, marked: false);
    }

    private void Change(SourceLine line, Side side, string rest)
    {
        // "#21 bats 4, shortstop", "#21 fields, pitcher"
        var (player, what) = rest.IndexOf(' ') is > 0 and var cut ? (rest[..cut], rest[(cut + 1)..]) : (rest, "");
        var comma = what.IndexOf(',');
        var (role, position) = comma < 0 ? (what, "") : (what[..comma].Trim(), what[(comma + 1)..].Trim());
        if (player.StartsWith('#') && role == "fields") Add(new Entered(side, 0, player, position, line.Number));
        else if (player.StartsWith('#') && role.StartsWith("bats ", StringComparison.Ordinal) && int.TryParse(role[5..], NumberStyles.None, CultureInfo.InvariantCulture, out var at) && at is > 0 and <= 30)
            Add(new Entered(side, at, player, position, line.Number));
        else Fault(line, "write 'in: #21 bats 4, shortstop' or 'in: #21 fields, pitcher'");
    }

    private void Batter(SourceLine line, string batter, string rest)
    {
        var parts = rest.Split(';').Select(p => p.Trim()).Where(p => p != "").ToList();
        var acts = parts.Count == 0 ? [] : parts[0].Split(',').Select(a => a.Trim()).Where(a => a != "").ToList();
        Add(new CameToBat(batter, line.Number));
        for (var i = 0; i < acts.Count; i++)
        {
            var act = Bare(acts[i]);
            if (Array.Find(Pitches, p => Words.Same(p.Words, act)) is { } thrown) { Add(new Pitched(thrown.Pitch, line.Number)); continue; }
            var result = Results.FirstOrDefault(r => act == r.Words || act.StartsWith(r.Words + " ", StringComparison.Ordinal));
            if (result is null || i != acts.Count - 1)
            {
                Fault(line, result is null ? $"'{act}' is no pitch and no result; {Words.Offer(act, [.. Pitches.Select(p => p.Words), .. Results.Select(r => r.Words)])}" : $"'{act}' ends the turn at bat; nothing comes after it but what the runners did, behind ';'");
                return;
            }
            Moves(line, batter, true, acts[i], [new(Place.Plate, result.To), .. parts.Skip(1).Select(p => Move(line, p, batter)).OfType<Move>()], parts);
            return;
        }
        if (parts.Count > 1) Fault(line, "the runners moved, but the batter's line has no result; write what the runners did on a line of its own, such as 'steals: #3 to second'");
    }

    private void Running(SourceLine line, string what, string rest)
    {
        var parts = rest.Split(';').Select(p => p.Trim()).Where(p => p != "").ToList();
        Moves(line, null, false, what, [.. parts.Select(p => Move(line, p, null)).OfType<Move>()], parts);
    }

    private void Moves(SourceLine line, string? batter, bool done, string what, List<Move> moves, List<string> parts)
    {
        // a batter who goes on past the base of her hit moves from the plate all the way
        var again = batter is null ? -1 : moves.FindLastIndex(m => m.Runner == batter);
        if (again > 0) { moves[0] = new(Place.Plate, moves[again].To); moves.RemoveAt(again); }
        Add(new Played(batter, done, moves, what, line.Number) { NoRunCounts = parts.Contains("no run counts") });
    }

    private Move? Move(SourceLine line, string text, string? batter)
    {
        text = Bare(text);
        if (text == "no run counts") return null;
        var cut = text.IndexOf(' ');
        var (who, went) = cut < 0 ? (text, "") : (text[..cut], text[(cut + 1)..]);
        if (who == "batter" && batter is not null) who = batter;
        Place? to = went switch { "scores" => Place.Home, "out" => Place.Out, _ when went.StartsWith("out at ", StringComparison.Ordinal) => Place.Out, _ when went.StartsWith("to ", StringComparison.Ordinal) => Base(went[3..]), _ => null };
        if (who.StartsWith('#') && to is { } place) return new(Place.Plate, place, who);
        Fault(line, $"cannot read '{text}'; a runner's move is '#3 to third', '#3 scores', '#3 out' or '#3 out at second'");
        return null;
    }

    /// <summary>A remark in brackets is for people.</summary>
    private static string Bare(string text)
    {
        var open = text.IndexOf('(');
        return (open < 0 ? text : text[..open]).Trim();
    }

    private static Place? Base(string text) => text switch { "first" => Place.First, "second" => Place.Second, "third" => Place.Third, "home" => Place.Home, _ => null };

    private static (string, string)? Pair(string text, string between) => text.IndexOf(between, StringComparison.Ordinal) is > 0 and var at ? (text[..at].Trim(), text[(at + between.Length)..].Trim()) : null;

    private static TimeOnly? Clock(string text) =>
        text.Split(' ').Select(w => TimeOnly.TryParseExact(w, "H:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var t) ? t : (TimeOnly?)null).FirstOrDefault(t => t is not null);
}
