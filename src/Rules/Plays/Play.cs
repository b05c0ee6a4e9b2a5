using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>A play as somebody wrote it down: what is said to have happened, under which code, and the ruling that was published.</summary>
public sealed class Play
{
    public required string File { get; init; }
    public string Id { get; set; } = "";
    public string Code { get; set; } = "";
    public string Sheet { get; set; } = "";
    public string Situation { get; set; } = "";
    /// <summary>What the play itself left open and was filled in: a body, a year, a fact.</summary>
    public string Assumed { get; set; } = "";
    public Citation? Source { get; set; }
    /// <summary>source, disputed, completed (from rule knowledge), or own.</summary>
    public string Standing { get; set; } = "source";
    /// <summary>Which collection a published play belongs to; empty for the cases the project began with.</summary>
    public string Collection { get; set; } = "";
    public List<Phrase> Given { get; } = [];
    /// <summary>What happened, moment by moment, in order.</summary>
    public List<Phrase> Happened { get; } = [];
    /// <summary>How the game stood, and the play in the words of a game file; empty when only the ruling is asked.</summary>
    public List<Phrase> Before { get; } = [];
    public List<Phrase> PlayLines { get; } = [];
    /// <summary>How the game stands after the ruling, as published: "choice or nothing: state".</summary>
    public List<Phrase> After { get; } = [];
    public List<Expected> Expect { get; } = [];
}

/// <summary>One decision of a published ruling and, when recorded, the rule that decides it.</summary>
public sealed record Expected(string Decision, string Value, string? By, int Line);

/// <summary>Reads a .play file; every fault at once.</summary>
public static class PlayReader
{
    private static readonly string[] Standings = ["source", "disputed", "completed", "own"];

    public static Play Read(string file, string text, List<Finding> findings)
    {
        var play = new Play { File = file };
        var part = "";
        void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, file, line, message));
        foreach (var line in SourceLine.Of(text, "# "))
        {
            if (line.Text is "Given" or "Happened" or "Expect" or "Before" or "Play" or "After") { part = line.Text; continue; }
            if (part == "Given") { play.Given.Add(new(line.Text, line.Number)); continue; }
            if (part == "Before") { play.Before.Add(new(line.Text, line.Number)); continue; }
            if (part == "Play") { play.PlayLines.Add(new(line.Text, line.Number)); continue; }
            if (part == "After") { play.After.Add(new(line.Text, line.Number)); continue; }
            if (part == "Happened") { play.Happened.Add(new(line.Text, line.Number)); continue; }
            if (part == "Expect")
            {
                if (ReadExpected(line) is { } expected) play.Expect.Add(expected);
                else Fault(FindingKind.UnreadableLine, line.Number, $"cannot read '{line.Short}'; write 'decision is value by R1'");
                continue;
            }
            var colon = line.Text.IndexOf(':');
            var (key, value) = colon < 0 ? ("", "") : (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim());
            switch (key)
            {
                case "Play": play.Id = value; break;
                case "code": play.Code = value; break;
                case "sheet": play.Sheet = value; break;
                case "situation": play.Situation = value; break;
                case "assumed": play.Assumed = value; break;
                case "source" when Citation.TryRead(value, out var cite): play.Source = cite; break;
                case "source": Fault(FindingKind.MissingCitation, line.Number, $"a source is written 'source: document | status', with status one of {Citation.Allowed}"); break;
                case "collection": play.Collection = value; break;
                case "standing" when Standings.Contains(value): play.Standing = value; break;
                default: Fault(FindingKind.UnreadableLine, line.Number, $"cannot read '{line.Short}'; a play has Play, code, sheet, situation, source, standing ({Words.Or(Standings)}), then Given, Happened and Expect"); break;
            }
        }
        if (play.Id == "") Fault(FindingKind.UnreadableLine, 0, "the play has no name; begin with 'Play: ID'");
        if (play.Code == "") Fault(FindingKind.BlankCell, 0, $"the play names no code; add 'code: {CodeAddress.Form}'");
        if (play.Sheet == "") Fault(FindingKind.BlankCell, 0, "the play names no sheet; add 'sheet: name'");
        return play;
    }

    private static Expected? ReadExpected(SourceLine line)
    {
        var text = line.Text;
        string? by = null;
        var at = text.LastIndexOf(" by ", StringComparison.Ordinal);
        if (at > 0 && !text[(at + 4)..].Trim().Contains(' ')) (by, text) = (text[(at + 4)..].Trim(), text[..at]);
        var cut = text.IndexOf(" is ", StringComparison.Ordinal);
        return cut <= 0 ? null : new(text[..cut].Trim(), text[(cut + 4)..].Trim(), by, line.Number);
    }
}
