using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>A sheet under one code: parameters filled in, conditions turned to boxes. What rulings, tables and proofs are made from.</summary>
public sealed class CodeSheet
{
    public required BoundSheet Bound { get; init; }
    public required Code Code { get; init; }
    /// <summary>The values a term may take under this code; bands that cannot be reached are left out.</summary>
    public required ulong[] Domain { get; init; }
    public required IReadOnlyDictionary<Parameter, Provenance> Values { get; init; }
    public required Box[] Impossible { get; init; }
    /// <summary>Entries by decision, in the order of <see cref="BoundSheet.Decisions"/>.</summary>
    public required Entry[][] Entries { get; init; }
    /// <summary>For number facts: the lower edges of their bands.</summary>
    public required IReadOnlyDictionary<int, double[]> Edges { get; init; }

    public IReadOnlyList<BoundTerm> Terms => Bound.Terms;
    public int FactCount => Bound.FactCount;

    /// <summary>Fills the parameters of a bound sheet. Null when a value is missing or cannot be; findings say which.</summary>
    public static CodeSheet? Of(BoundSheet bound, Code code, List<Finding> findings)
    {
        var before = findings.Count;
        var values = new Dictionary<Parameter, Provenance>();
        foreach (var parameter in bound.Parameters)
        {
            if (code.Value(parameter) is { } value) values[parameter] = value;
            else findings.Add(new(FindingKind.BlankCell, bound.Sheet.File, parameter.Line, $"'{parameter.Name}' has no value for {code.Address}"));
        }
        if (findings.Count > before) return null;
        var domain = bound.Terms.Select(t => t.Full).ToArray();
        var edges = new Dictionary<int, double[]>();
        foreach (var fact in bound.Facts.Where(f => f.Term.Band is { Edges.Count: > 0 })) Bands(bound, fact, values, domain, edges, code, findings);
        if (findings.Count > before) return null;

        var boxes = bound.Clauses.Select(c => BoxOf(bound, c.When, values)).ToArray();
        for (var i = 0; i < boxes.Length; i++)
            if (bound.Clauses[i].Parent is >= 0 and var parent)
                boxes[i] = boxes[i] is { } own && boxes[parent] is { } above ? Box.Both(own, above) : null;
        var entries = bound.Decisions.Select(d => EntriesOf(bound, d, boxes, values)).ToArray();
        return new()
        {
            Bound = bound, Code = code, Domain = domain, Values = values, Entries = entries, Edges = edges,
            Impossible = [.. bound.Impossible.Select(i => BoxOf(bound, i.When, values)).OfType<Box>()],
        };
    }

    private static void Bands(
        BoundSheet bound, BoundTerm fact, Dictionary<Parameter, Provenance> values, ulong[] domain, Dictionary<int, double[]> edges, Code code, List<Finding> findings)
    {
        var band = fact.Term.Band!;
        var at = new double[band.Edges.Count];
        for (var i = 0; i < at.Length; i++)
        {
            var (text, edge) = (band.Edges[i].Text, band.Edges[i]);
            Quantity? quantity = null;
            if (edge.Parameter is { } name)
            {
                var parameter = bound.Parameters.FirstOrDefault(p => p.Sheet == fact.Sheet && Words.Same(p.Name, name));
                if (parameter is null) { findings.Add(new(FindingKind.UnknownWord, bound.Sheet.File, fact.Term.Line, $"the edge {text} of '{fact.Name}' is no parameter; {Words.Offer(name, [.. bound.Parameters.Select(p => p.Name)])}")); return; }
                quantity = values[parameter].Quantity;
            }
            else Quantity.TryRead(text.Contains(' ') ? text : $"{text} {band.Unit}", out quantity!);
            if (quantity is null || (!quantity.IsNone && quantity.Unit != band.Unit))
            {
                findings.Add(new(FindingKind.ImpossibleValue, bound.Sheet.File, fact.Term.Line, $"the edge {text} of '{fact.Name}' is not a number of {band.Unit}"));
                return;
            }
            at[i] = edge.Above ? Math.BitIncrement(quantity.Value + edge.Offset) : quantity.Value + edge.Offset;
            if (!quantity.IsNone && (quantity.Value < band.Low || quantity.Value > band.High))
                findings.Add(new(FindingKind.ImpossibleValue, bound.Sheet.File, fact.Term.Line, $"the edge {text} of '{fact.Name}' is {quantity}, outside {band.Low} to {band.High} {band.Unit} ({code.Address})"));
            if (i > 0 && at[i] < at[i - 1])
                findings.Add(new(FindingKind.ImpossibleValue, bound.Sheet.File, fact.Term.Line, $"the edges of '{fact.Name}' do not rise: {band.Edges[i - 1].Text} is {at[i - 1]}, {text} is {at[i]} ({code.Address})"));
        }
        edges[fact.Index] = at;
        for (var v = 0; v < fact.Values.Count; v++)
        {
            var low = v == 0 ? double.NegativeInfinity : at[v - 1];
            var high = v == at.Length ? double.PositiveInfinity : at[v];
            if (double.IsPositiveInfinity(low) || low == high || high <= band.Low) domain[fact.Index] &= ~(1UL << v);
        }
    }

    private static Box? BoxOf(BoundSheet bound, IEnumerable<Condition> when, Dictionary<Parameter, Provenance> values)
    {
        var conditions = new List<Allowed>();
        foreach (var condition in when)
        {
            if (condition.Left is { } parameter)
            {
                var equal = condition.Operands.Any(o => SameValue(values[parameter], o.Word ?? values[o.Parameter!].Value));
                if (equal != (condition.Comparison == Comparison.Is)) return null;
                continue;
            }
            conditions.Add(new(condition.Term, Mask(bound.Terms[condition.Term], condition, values)));
        }
        return Box.Of(conditions);
    }

    private static bool SameValue(Provenance value, string word) =>
        Words.Same(value.Value, word)
        || (value.Quantity is { } q && Quantity.TryRead(word, out var other) && q.Value.Equals(other.Value) && (q.Unit == other.Unit || q.IsNone));

    internal static ulong Mask(BoundTerm term, Condition condition, IReadOnlyDictionary<Parameter, Provenance> values)
    {
        ulong named = 0;
        var at = 0;
        foreach (var operand in condition.Operands)
        {
            at = term.ValueIndex(operand.Word ?? values[operand.Parameter!].Value);
            named |= 1UL << at;
        }
        var below = (1UL << at) - 1;
        return condition.Comparison switch
        {
            Comparison.Is => named,
            Comparison.IsNot => term.Full & ~named,
            Comparison.Before => below,
            Comparison.AtMost => below | named,
            Comparison.After => term.Full & ~(below | named),
            _ => term.Full & ~below,
        };
    }

    private static Entry[] EntriesOf(BoundSheet bound, BoundTerm decision, Box?[] boxes, Dictionary<Parameter, Provenance> values)
    {
        var sets = new Setting?[bound.Clauses.Count];
        foreach (var clause in bound.Clauses)
            if (boxes[clause.Index] is not null)
                foreach (var setting in clause.Then)
                    if (setting.Decision == decision.Index) sets[clause.Index] = setting;
        var entries = new List<Entry>();
        foreach (var clause in bound.Clauses)
        {
            if (sets[clause.Index] is not { } setting) continue;
            List<Box> holes = [];
            foreach (var over in bound.Overriders[clause.Index])
                if (boxes[over] is { } hole && sets[over] is not null) holes.Add(hole);
            var value = decision.ValueIndex(setting.Value.Word ?? values[setting.Value.Parameter!].Value);
            entries.Add(new(decision.Index, value, clause.Index, boxes[clause.Index]!, [.. holes]));
        }
        return [.. entries];
    }

    /// <summary>The band a number falls in; -1 when it lies outside the fact's range.</summary>
    public int BandOf(int fact, double number)
    {
        var band = Terms[fact].Term.Band!;
        if (number < band.Low || number > band.High) return -1;
        var edges = Edges[fact];
        var at = 0;
        while (at < edges.Length && number >= edges[at]) at++;
        return at;
    }
}
