using System.Globalization;
using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.Store.Files;

/// <summary>One row being read. Every cell that cannot be read becomes a fault, and reading goes on.</summary>
public sealed class Row(int number, IReadOnlyDictionary<string, string> cells, List<FileFault> faults)
{
    private const int Longest = 200;

    public int Number => number;

    public string Text(string column, int longest = Longest)
    {
        return Checked(column, cells.GetValueOrDefault(column, "").Trim(), longest);
    }

    /// <summary>The cell with its outer blanks and line ends, for what is a text of its own.</summary>
    public string AsWritten(string column, int longest) => Checked(column, cells.GetValueOrDefault(column, ""), longest);

    private string Checked(string column, string text, int longest)
    {
        if (text.Length > longest) { Fault(column, text, $"at most {longest} characters"); return ""; }
        if (text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t')) || (longest == Longest && text.Contains('\n'))) { Fault(column, text, "plain text without control characters"); return ""; }
        return text;
    }

    public string? Optional(string column) => Text(column) is { Length: > 0 } text ? text : null;

    public string Needed(string column, string allowed = "something")
    {
        var text = Text(column);
        if (text == "" && cells.GetValueOrDefault(column, "").Trim() == "") Fault(column, "", allowed);
        return text;
    }

    /// <summary>A key: what a record is called in files.</summary>
    public string Key(string column)
    {
        var text = Text(column);
        if (text is { Length: > 0 and <= 64 } && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.' or '+' or ' ')) return text;
        Fault(column, text, "a key of at most 64 letters, digits, blanks, dashes, dots and plus signs");
        return "";
    }

    /// <summary>A key that must be on record.</summary>
    public string Known(string column, string key, IReadOnlySet<string> known, string what)
    {
        if (key == "") Fault(column, "", $"the key of a {what}");
        else if (!known.Contains(key)) Fault(column, key, known.Count == 0 ? $"the key of a {what}; none is on record yet" : $"the key of a {what} on record; {Words.Offer(key, [.. known.Take(2000)])}");
        return key;
    }

    public string Known(string column, IReadOnlySet<string> known, string what) => Known(column, Text(column), known, what);

    public T Choice<T>(string column, params (string Word, T Value)[] choices)
    {
        var text = Text(column);
        foreach (var (word, value) in choices) if (Words.Same(word, text)) return value;
        Fault(column, text, Words.Or([.. choices.Select(c => c.Word)]));
        return choices[0].Value;
    }

    public T Choice<T>(string column, Func<T, string> word) where T : struct, Enum => Choice(column, [.. Enum.GetValues<T>().Select(v => (word(v), v))]);

    public int Whole(string column, int low, int high)
    {
        var text = Text(column);
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && number >= low && number <= high) return number;
        Fault(column, text, $"a whole number from {low} to {high}");
        return low;
    }

    public double Decimal(string column, double low, double high)
    {
        var text = Text(column);
        if (double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            && number >= low && number <= high) return Math.Round(number, Written.Places);
        Fault(column, text, FormattableString.Invariant($"a number from {low} to {high}"));
        return low;
    }

    public DateOnly Day(string column) => OptionalDay(column) is { } day ? day : Missing(column, "a day written 2026-05-16");

    public DateOnly? OptionalDay(string column)
    {
        var text = Text(column);
        if (text == "") return null;
        if (CodeAddress.TryDate(text, out var day)) return day;
        Fault(column, text, "a day written 2026-05-16");
        return DateOnly.MinValue;
    }

    private DateOnly Missing(string column, string allowed)
    {
        Fault(column, "", allowed);
        return DateOnly.MinValue;
    }

    public TimeOnly Clock(string column)
    {
        var text = Text(column);
        if (TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)) return time;
        Fault(column, text, "a time of day written 17:30");
        return default;
    }

    /// <summary>An instant in UTC, to the second.</summary>
    public DateTime Instant(string column)
    {
        var text = Text(column);
        if (DateTime.TryParseExact(text, Written.InstantForm, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var instant)) return instant;
        Fault(column, text, "a moment in UTC written 2026-05-16 13:05:30");
        return DateTime.UnixEpoch;
    }

    public bool Yes(string column) => Choice(column, ("yes", true), ("no", false));

    /// <summary>Several words in one cell, parted by semicolons.</summary>
    public IReadOnlyList<string> Several(string column) => [.. Text(column).Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Distinct()];

    /// <summary>Whether nothing is wrong with these cells so far: what cannot be read is not compared.</summary>
    public bool Fine(params string[] columns) => !faults.Any(f => f.Row == number && columns.Contains(f.Column));

    public void Fault(string column, string found, string allowed)
    {
        // a cell that is looked at twice is told once
        var fault = new FileFault(number, column, found, allowed);
        if (!faults.TakeLast(20).Contains(fault)) faults.Add(fault);
    }

    public void Add(IEnumerable<FieldFault> wrong)
    {
        foreach (var fault in wrong) Fault(fault.Field, fault.Found, fault.Allowed);
    }
}
