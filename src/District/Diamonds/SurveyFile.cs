using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>A survey as somebody typed it: whose diamond, which codes it is held against, how good the tape is (in feet), and what it read.</summary>
public sealed record SurveyFile(string Name, IReadOnlyList<string> Codes, double? Tape, IReadOnlyList<Reading> Readings)
{
    private const string Form = "write 'home-second 127 ft 3 1/2 in', or 'Survey:', 'codes:' or 'tape:'";

    /// <summary>The longest tape that is carried to a diamond, in feet: a longer reading was typed in another unit.</summary>
    private const double LongestTape = 500;

    /// <summary>What the middle of the pitcher's plate is called in a survey.</summary>
    public const string Plate = "plate";

    /// <summary>Reads a survey; null, with every fault, when a line cannot be used.</summary>
    /// <param name="known">The points a field has.</param>
    /// <param name="wrong">Why a code cannot be used; null when it can.</param>
    public static SurveyFile? Read(string file, string text, IReadOnlyCollection<string> known, List<Finding> findings, Func<string, string?>? wrong = null)
    {
        var before = findings.Count;
        var (name, tape) = ("", (double?)null);
        IReadOnlyList<string> codes = [];
        var readings = new List<Reading>();
        void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, file, line, message));
        foreach (var line in SourceLine.Of(text))
        {
            var colon = line.Text.IndexOf(':');
            var (key, value) = colon < 0 ? ("", "") : (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim());
            switch (key)
            {
                case "Survey": name = value; continue;
                case "codes": codes = [.. value.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
                    foreach (var code in codes) if (wrong?.Invoke(code) is { } refused) Fault(FindingKind.UnknownWord, line.Number, refused);
                    continue;
                case "tape":
                    tape = Diamonds.Tape.Read(value, out var why);
                    if (tape is null) Fault(FindingKind.ImpossibleValue, line.Number, why);
                    continue;
            }
            if (Names(line.Text) is not var (from, to, length)) { Fault(FindingKind.UnreadableLine, line.Number, $"cannot read '{line.Short}'; {Form}"); continue; }
            var point = findings.Count;
            foreach (var typed in (string[])[from, to])
                if (!known.Contains(typed, StringComparer.OrdinalIgnoreCase)) Fault(FindingKind.UnknownWord, line.Number, $"a field has no point '{typed}'; {(Words.Near(typed, known) is { Count: > 0 } near ? Words.Meant(near) : $"it may be {Words.Or([.. Layout.Corners, Plate, "the full name of a mark"])}")}");
            if (Words.Same(from, to)) Fault(FindingKind.ImpossibleValue, line.Number, $"a tape from {from} to {to} reads nothing; name two points");
            var feet = Diamonds.Tape.Read(length, out var fault);
            if (feet is null) Fault(FindingKind.ImpossibleValue, line.Number, fault);
            else if (feet > LongestTape) Fault(FindingKind.ImpossibleValue, line.Number, $"'{length}' is {Diamonds.Tape.Told(feet.Value)}; no tape is longer than {Diamonds.Tape.Told(LongestTape)}: is the unit right?");
            else if (feet < 1) Fault(FindingKind.ImpossibleValue, line.Number, $"'{length}' is less than a foot; is the unit right?");
            else if (findings.Count == point) readings.Add(new(from.ToLowerInvariant(), to.ToLowerInvariant(), feet.Value, line.Number));
        }
        if (readings.Count == 0 && findings.Count == before) Fault(FindingKind.UnreadableLine, 0, $"no tape was read; {Form}");
        return findings.Count > before ? null : new(name == "" ? file : name, codes, tape, readings);
    }

    /// <summary>"home-second 127 ft" and "home to second 127 ft": both points, and the rest from the first digit on.</summary>
    private static (string From, string To, string Length)? Names(string text)
    {
        var digit = text.AsSpan().IndexOfAnyInRange('0', '9');
        if (digit > 0 && text[digit - 1] == '-' && digit > 1 && text[digit - 2] == ' ') digit--;
        if (digit <= 0) return null;
        var names = text[..digit].Trim();
        var word = names.IndexOf(" to ", StringComparison.Ordinal);
        var (cut, wide) = word >= 0 ? (word, " to ".Length) : (names.IndexOf('-'), 1);
        if (cut <= 0) return null;
        var (from, to) = (names[..cut].Trim(), names[(cut + wide)..].Trim());
        return from == "" || to == "" ? null : (from, to, text[digit..].Trim());
    }
}
