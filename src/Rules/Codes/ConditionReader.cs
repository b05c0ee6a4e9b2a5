using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Binds the words of conditions and settings to terms and parameters. Every unknown word is told with the near ones.</summary>
internal sealed class ConditionReader(
    IReadOnlyDictionary<string, BoundTerm> terms, IReadOnlyDictionary<string, Parameter> parameters, List<Finding> findings)
{
    private static readonly (string Words, Comparison Comparison)[] Ordered =
        [("before ", Comparison.Before), ("after ", Comparison.After), ("at least ", Comparison.AtLeast), ("at most ", Comparison.AtMost)];

    private string file = "";
    private int line;

    private void Fault(FindingKind kind, string message) => findings.Add(new(kind, file, line, message));

    public Condition? Condition(string file, Phrase phrase)
    {
        (this.file, line) = (file, phrase.Line);
        if (Subject(phrase.Text) is not var (term, left, rest)) return null;
        var values = term?.Values ?? left!.Values;
        var name = term?.Name ?? left!.Name;
        var comparison = Comparison.Is;
        if (!BeginsWithValue(values, rest) && !rest.StartsWith('['))
        {
            if (rest.StartsWith("not ", StringComparison.Ordinal)) (comparison, rest) = (Comparison.IsNot, rest[4..]);
            else
                foreach (var (words, ordered) in Ordered)
                    if (rest.StartsWith(words, StringComparison.Ordinal)) { (comparison, rest) = (ordered, rest[words.Length..]); break; }
        }
        if (comparison > Comparison.IsNot && term is not { Term.Ordered: true })
        {
            Fault(FindingKind.UnknownWord, $"'{name}' has no order; write its values with '<' to compare them");
            return null;
        }
        var operands = Operands(name, values, left?.Unit, term, rest);
        if (operands is null) return null;
        if (comparison > Comparison.IsNot && operands.Count != 1) { Fault(FindingKind.UnreadableLine, "an order compares with one value"); return null; }
        return new(term?.Index ?? -1, left, comparison, operands, line);
    }

    public Setting? Setting(string file, Phrase phrase)
    {
        (this.file, line) = (file, phrase.Line);
        if (Subject(phrase.Text) is not var (term, left, rest)) return null;
        if (term is null || left is not null || !term.IsDecision || !term.Own)
        {
            Fault(FindingKind.UnknownWord, $"'{term?.Name ?? left!.Name}' is not a decision of this sheet; {Words.Offer(term?.Name ?? left!.Name, DecisionNames())}");
            return null;
        }
        return Operands(term.Name, term.Values, null, term, rest) switch
        {
            [var one] => new(term.Index, one, line),
            null => null,
            _ => Refuse($"'{term.Name}' can be set to one value only"),
        };
    }

    private Setting? Refuse(string message) { Fault(FindingKind.UnreadableLine, message); return null; }

    private List<string> DecisionNames() => [.. terms.Values.Where(t => t.IsDecision && t.Own).Select(t => t.Name)];

    /// <summary>Splits "name is rest" where the name is known; the name itself may hold the word "is".</summary>
    private (BoundTerm? Term, Parameter? Left, string Told)? Subject(string text)
    {
        const string Is = " is ";
        var first = text.IndexOf(Is, StringComparison.Ordinal);
        if (first <= 0) { Fault(FindingKind.UnreadableLine, $"cannot read '{Cut(text)}'; write 'name is value'"); return null; }
        if (text[0] == '[')
        {
            var close = text.IndexOf(']');
            if (close < 0 || !text[(close + 1)..].StartsWith(Is, StringComparison.Ordinal)) { Fault(FindingKind.UnreadableLine, $"cannot read '{Cut(text)}'; write '[parameter] is value'"); return null; }
            return Find(text[1..close]) is { } parameter ? (null, parameter, text[(close + 1 + Is.Length)..].Trim()) : null;
        }
        // the longest name that is known: one name may begin with another
        for (var at = text.LastIndexOf(Is, StringComparison.Ordinal); at > 0; at = text.LastIndexOf(Is, at - 1, StringComparison.Ordinal))
            if (terms.TryGetValue(text[..at].Trim(), out var term)) return (term, null, text[(at + Is.Length)..].Trim());
        Fault(FindingKind.UnknownWord, $"there is no fact or decision '{Cut(text[..first])}'; {Words.Offer(text[..first], [.. terms.Keys])}");
        return null;
    }

    private Parameter? Find(string name)
    {
        if (parameters.TryGetValue(name.Trim(), out var parameter)) return parameter;
        Fault(FindingKind.UnknownWord, $"there is no parameter '{Cut(name)}'; {Words.Offer(name, [.. parameters.Keys])}");
        return null;
    }

    private static string Cut(string text) => text.Length <= 60 ? text : text[..57] + "...";

    private static bool BeginsWithValue(IReadOnlyList<string> values, string text) =>
        values.Any(v => Words.Same(v, text) || text.StartsWith(v + " or ", StringComparison.OrdinalIgnoreCase));

    /// <summary>Splits at " or ", but not inside [a parameter's name].</summary>
    private static string[] Pieces(string text)
    {
        var pieces = new List<string>();
        foreach (var piece in text.Split(" or "))
            if (pieces.Count > 0 && pieces[^1].LastIndexOf('[') > pieces[^1].LastIndexOf(']')) pieces[^1] += " or " + piece;
            else pieces.Add(piece);
        return [.. pieces];
    }

    private List<Operand>? Operands(string name, IReadOnlyList<string> values, string? unit, BoundTerm? term, string text)
    {
        var operands = new List<Operand>();
        var pieces = Pieces(text);
        for (var i = 0; i < pieces.Length; i++)
        {
            // a value may itself hold " or ": the longest run of pieces that is a value counts
            var taken = 0;
            for (var n = Math.Min(pieces.Length, i + 8); n > i && taken == 0; n--)
            {
                var word = string.Join(" or ", pieces[i..n]).Trim();
                var known = values.FirstOrDefault(v => Words.Same(v, word));
                if (known is null && unit is not null && Quantity.TryRead(word, out var quantity) && (quantity.IsNone || quantity.Unit == unit)) known = word;
                if (known is null) continue;
                operands.Add(new(known, null));
                taken = n - i;
            }
            if (taken > 0) { i += taken - 1; continue; }
            var piece = pieces[i].Trim();
            if (piece is ['[', .., ']'] && term is not null)
            {
                if (Find(piece[1..^1]) is not { } parameter) return null;
                var strange = parameter.Values.FirstOrDefault(v => term.ValueIndex(v) < 0);
                if (parameter.Unit is not null || strange is not null)
                {
                    Fault(FindingKind.UnknownWord, $"[{parameter.Name}] may be '{strange ?? "a number"}', which '{name}' cannot be; {Words.Offer(strange ?? "", values)}");
                    return null;
                }
                operands.Add(new(null, parameter));
                continue;
            }
            Fault(FindingKind.UnknownWord, $"'{name}' has no value '{Cut(piece)}'; {Words.Offer(piece, values)}{(term?.Term.Band is { } band ? FormattableString.Invariant($", or a number of {band.Unit} from {band.Low} to {band.High}") : "")}");
            return null;
        }
        return operands;
    }
}
