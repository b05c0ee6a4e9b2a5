using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Reads a parameter's value lines: "scope = value | source | status".</summary>
internal static class ValueReader
{
    public const string Form = "scope = value | source | status";

    /// <summary>Splits off the value and its citation; reports what is wrong and returns null.</summary>
    public static ValueLine? Read(string file, SourceLine line, Parameter? parameter, Roster roster, bool gameNeeded, List<Finding> findings)
    {
        void Fault(FindingKind kind, string message) => findings.Add(new(kind, file, line.Number, message));
        var equals = line.Text.IndexOf('=');
        if (equals < 0) { Fault(FindingKind.UnreadableLine, $"cannot read '{line.Short}'; a value is written '{Form}'"); return null; }
        var scope = ScopeReader.Read(line.Text[..equals], roster, gameNeeded, out var fault);
        if (scope is null) { Fault(FindingKind.UnknownWord, fault); return null; }
        var rest = line.Text[(equals + 1)..];
        var bar = rest.IndexOf('|');
        var value = (bar < 0 ? rest : rest[..bar]).Trim();
        if (value.Length == 0) { Fault(FindingKind.BlankCell, "the value is blank; 'does not apply' or 'none' are values too"); return null; }
        if (bar < 0 || !Citation.TryRead(rest[(bar + 1)..], out var cite))
        {
            Fault(FindingKind.MissingCitation, $"the value '{value}' needs its source and status: '| source | status', with status one of {Citation.Allowed}");
            cite = new("no source given", Standing.FromMemory);
        }
        return Checked(file, line.Number, parameter, value, findings) is { } known ? new(scope, known.Value, known.Quantity, cite, line.Number) : null;
    }

    /// <summary>Holds a value against its parameter: one of its words, or a number in its unit.</summary>
    public static (string Value, Quantity? Quantity)? Checked(string file, int line, Parameter? parameter, string value, List<Finding> findings)
    {
        if (parameter is null) return (value, null);
        if (parameter.Unit is null)
        {
            var known = parameter.Values.FirstOrDefault(v => Words.Same(v, value));
            if (known is not null) return (known, null);
            findings.Add(new(FindingKind.UnknownWord, file, line, $"'{parameter.Name}' has no value '{value}'; {Words.Offer(value, parameter.Values)}"));
            return null;
        }
        if (Quantity.TryRead(value, out var quantity) && (quantity.IsNone || quantity.Unit == parameter.Unit)) return (value, quantity);
        findings.Add(new(FindingKind.ImpossibleValue, file, line, $"'{parameter.Name}' is a number of {parameter.Unit}; '{value}' is not; write it as '12 {parameter.Unit}' or 'none'"));
        return null;
    }
}
