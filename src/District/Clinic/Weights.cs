using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>How much each kind of sign weighs when the next clinic is planned. Data: codes/clinic/weights.txt.</summary>
/// <param name="HalvesAfter">Days after which a sign weighs half.</param>
/// <param name="LooksBack">Days after which a sign weighs nothing.</param>
/// <param name="MostByOne">Signs of one kind on one subject that count of one person: who asks or drills a great deal does not fill the clinic.</param>
public sealed record Weights(IReadOnlyDictionary<SignKind, double> Of, int HalvesAfter, int LooksBack, int MostByOne)
{
    private const string Halves = "halves after", Back = "looks back", One = "most by one person";

    /// <summary>Reads the weights; null, with every fault, when one is missing or cannot be read.</summary>
    public static Weights? Read(string file, string text, List<Finding> findings)
    {
        var before = findings.Count;
        void Fault(int line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line, message));
        var kinds = Enum.GetValues<SignKind>().ToDictionary(Sign.Word);
        List<string> names = [.. kinds.Keys, Halves, Back, One];
        var read = new Dictionary<string, double>();
        foreach (var line in SourceLine.Of(text))
        {
            var (name, rest) = line.Text.IndexOf(':') is >= 0 and var colon ? (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim()) : (line.Text.Trim(), "");
            if (!names.Contains(name)) { Fault(line.Number, $"cannot read '{line.Short}'; {Words.Offer(name, names)}"); continue; }
            var days = name is Halves or Back;
            var number = days && rest.EndsWith(" days", StringComparison.Ordinal) ? rest[..^5] : days ? "" : rest;
            var whole = !kinds.ContainsKey(name);
            if (!double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) || value > 1000 || (whole && (value < 1 || value != Math.Floor(value))))
                Fault(line.Number, $"'{name}' is '{rest}'; allowed is {(days ? "a number of days from 1 to 1000: '60 days'" : whole ? "a whole number from 1 to 1000" : "a number from 0 to 1000")}");
            else if (!read.TryAdd(name, value)) Fault(line.Number, $"'{name}' is told twice");
        }
        foreach (var missing in names.Where(n => !read.ContainsKey(n) && !findings.Skip(before).Any(f => f.Message.StartsWith($"'{n}' is", StringComparison.Ordinal)))) Fault(0, $"'{missing}' is missing");
        return findings.Count > before ? null : new(kinds.ToDictionary(k => k.Value, k => read[k.Key]), (int)read[Halves], (int)read[Back], (int)read[One]);
    }
}
