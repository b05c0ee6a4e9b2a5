using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.Cli;

/// <summary>A verb's own options taken out of what was typed, and the words that remain. Every fault is kept, each with the option, what was found and what was allowed.</summary>
internal sealed class Options
{
    private readonly List<(string Name, string Value)> given = [];
    private readonly List<string> words = [];

    /// <summary>Reads options that take a value, and marks that take none.</summary>
    public Options(Request request, IReadOnlyList<string> valued, IReadOnlyList<string>? marks = null)
    {
        for (var i = 0; i < request.Words.Count; i++)
        {
            var typed = request.Words[i];
            if (marks?.Contains(typed) == true) given.Add((typed, ""));
            else if (!valued.Contains(typed)) { if (typed.StartsWith("--", StringComparison.Ordinal)) Faults.Add($"there is no option '{typed}'; {Rules.Ground.Words.Offer(typed, [.. valued, .. marks ?? []])}"); else words.Add(typed); }
            else if (i + 1 < request.Words.Count && !request.Words[i + 1].StartsWith("--", StringComparison.Ordinal)) given.Add((typed, request.Words[++i]));
            else Faults.Add($"{typed}: found nothing after it; allowed is a value");
        }
    }

    public IReadOnlyList<string> Words => words;

    public List<string> Faults { get; } = [];

    public bool Has(string mark) => given.Any(g => g.Name == mark);

    /// <summary>What stands behind an option; the last when it was typed more than once.</summary>
    public string? Text(string name) => given.LastOrDefault(g => g.Name == name).Value;

    public IReadOnlyList<string> All(string name) => [.. given.Where(g => g.Name == name).Select(g => g.Value)];

    public DateOnly? Day(string name) => Read<DateOnly>(name, "a day written 2026-05-18", CodeAddress.TryDate);

    public TimeOnly? Time(string name) => Read(name, "a time of day written 17:40", (string text, out TimeOnly time) => TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out time));

    public DateTime? Moment(string name) => Read(name, "a moment written 2026-05-21T15:00", (string text, out DateTime moment) => DateTime.TryParseExact(text, "yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out moment));

    /// <summary>A whole number within bounds; what it counts is said in the fault.</summary>
    public int? Count(string name, int low, int high, string what) =>
        Read(name, $"{what} from {low} to {high}", (string text, out int number) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number) && number >= low && number <= high);

    public double? Number(string name, double low, double high, string what) =>
        Read(name, string.Create(CultureInfo.InvariantCulture, $"{what} from {low} to {high}"), (string text, out double number) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number) && number >= low && number <= high);

    /// <summary>Prints what cannot be used, and how it is written; false when all can be.</summary>
    public bool Faulty(string form)
    {
        foreach (var fault in Faults) Console.Error.WriteLine(fault);
        if (Faults.Count > 0) Console.Error.WriteLine(form);
        return Faults.Count > 0;
    }

    private delegate bool Try<T>(string text, out T value);

    private T? Read<T>(string name, string allowed, Try<T> read) where T : struct
    {
        if (Text(name) is not { } text) return null;
        if (read(text, out var value)) return value;
        Faults.Add($"{name}: found '{text}'; allowed is {allowed}");
        return null;
    }
}
