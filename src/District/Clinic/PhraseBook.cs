using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>
/// The sentences in which facts are told and decisions asked for, as an instructor says them. Data: codes/phrases, one file a sheet; what a sheet has
/// no words for is asked in the common ones.
/// </summary>
public sealed class PhraseBook
{
    internal const string Everywhere = "every sheet";

    private readonly Dictionary<(string Sheet, string Said), string> sentences = new(Folded);
    private readonly Dictionary<(string Sheet, string Decision), string> asks = new(Folded);
    private readonly Dictionary<(string Sheet, string Decision), IReadOnlyList<string>> others = new(Folded);
    private readonly Dictionary<string, (string One, string Many)> units = new(StringComparer.Ordinal);

    private readonly Dictionary<string, string> cautions = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, string> settings = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, IReadOnlyList<string>> leads = new(StringComparer.OrdinalIgnoreCase);

    private static readonly IEqualityComparer<(string, string)> Folded = EqualityComparer<(string, string)>.Create(
        (a, b) => string.Equals(a.Item1, b.Item1, StringComparison.OrdinalIgnoreCase) && string.Equals(a.Item2, b.Item2, StringComparison.OrdinalIgnoreCase),
        a => HashCode.Combine(StringComparer.OrdinalIgnoreCase.GetHashCode(a.Item1), StringComparer.OrdinalIgnoreCase.GetHashCode(a.Item2)));

    internal bool Say(string sheet, string said, string sentence) => sentences.TryAdd((sheet, said), sentence);
    internal bool Asking(string sheet, string decision, string ask) => asks.TryAdd((sheet, decision), ask);
    internal bool Other(string sheet, string decision, IReadOnlyList<string> answers) => others.TryAdd((sheet, decision), answers);
    internal bool Set(string sheet, string sentence) => settings.TryAdd(sheet, sentence);
    internal bool Lead(string sheet, IReadOnlyList<string> facts) => leads.TryAdd(sheet, facts);
    internal bool Warn(string group, string sentence) => cautions.TryAdd(group, sentence);
    internal void Unit(string unit, string one, string many) => units[unit] = (one, many);

    /// <summary>The sentence for a fact's value; null when nobody wrote one.</summary>
    public string? Fact(string sheet, string fact, string value) => sentences.GetValueOrDefault((sheet, $"{fact} is {value}"));

    /// <summary>The sentence for a fact that is a number, the number filled in; null when nobody wrote one.</summary>
    public string? Number(string sheet, string fact, double number, string unit)
    {
        if (sentences.GetValueOrDefault((sheet, fact)) is not { } pattern) return null;
        var written = Written(number);
        var (one, many) = units.GetValueOrDefault(unit, (unit, unit));
        return Words.Upper(pattern.Replace("{number}", $"{written} {(Math.Abs(number - 1) < 1e-9 ? one : many)}").Replace("{n}", written));
    }

    /// <summary>The sentence that sets the scene for a sheet; null where its facts do that themselves.</summary>
    public string? Setting(string sheet) => settings.GetValueOrDefault(sheet);

    /// <summary>What is said beside every ruling of a group of subjects, such as safety; null where nothing is.</summary>
    public string? Caution(string group) => cautions.GetValueOrDefault(group);

    /// <summary>Facts without which nobody would know what the play is about: they are always told, and first. Null: the sheet's first fact, unless there is a setting.</summary>
    public IReadOnlyList<string>? Leads(string sheet) => leads.GetValueOrDefault(sheet);

    /// <summary>How a decision is asked for.</summary>
    public string Ask(string sheet, string decision) =>
        asks.GetValueOrDefault((sheet, decision)) ?? asks.GetValueOrDefault((Everywhere, decision)) ?? $"What is ruled on this: {decision}?";

    internal bool Asks(string sheet, string decision) => asks.ContainsKey((sheet, decision)) || asks.ContainsKey((Everywhere, decision));

    internal bool HasNumber(string sheet, string fact) => sentences.ContainsKey((sheet, fact));

    /// <summary>Wrong answers written down for a decision that can come out in one way only.</summary>
    public IReadOnlyList<string> Others(string sheet, string decision) => others.GetValueOrDefault((sheet, decision)) ?? [];

    internal static string Written(double number) => number.ToString("0.####", CultureInfo.InvariantCulture);
}
