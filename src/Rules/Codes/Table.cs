using System.Numerics;

namespace Umpirage.Rules.Codes;

/// <summary>One line of a decision table: a box of facts, and for each decision the value and the clause that decides.</summary>
public sealed record Cell(ulong[] Facts, int[] Values, int[] Clauses);

/// <summary>A place where the rules of a sheet fall silent or contradict one another: the space, the decision, the entries that hold.</summary>
public sealed record Fault(int Decision, ulong[] Space, IReadOnlyList<Entry> Holding);

/// <summary>
/// A sheet under one code, worked out for every possible case: the lines of its decision table, which together are every case once, and a
/// walk that finds a case's line in a few steps. Made by splitting the space of cases until every rule holds wholly or not at all.
/// </summary>
public sealed class Table
{
    public required CodeSheet Sheet { get; init; }
    public required IReadOnlyList<Cell> Cells { get; init; }
    public required IReadOnlyList<Fault> Faults { get; init; }
    /// <summary>Clauses that decide something somewhere, and those whose absence would change a value.</summary>
    public required bool[] Fired { get; init; }
    public required bool[] Changes { get; init; }
    /// <summary>True when the work allowed ran out; nothing is then proven.</summary>
    public required bool TooEntangled { get; init; }
    /// <summary>Steps of work it took.</summary>
    public required long Work { get; init; }
    /// <summary>The walk: at a node, a fact's number and then the next node for each of its values; a negative node is ~cell; int.MaxValue, impossible.</summary>
    public required int[] Walk { get; init; }

    public const int Impossible = int.MaxValue;

    /// <summary>
    /// Steps of work before a sheet counts as too entangled to prove: a floor, and more for a longer text. A step compares one condition with
    /// one space of cases. None of our sheets needs a third of it.
    /// </summary>
    public static long Enough(Sheet sheet) => 1_000_000 + 20L * sheet.Length;

    public static Table Of(CodeSheet sheet, long? work = null) => new Splitter(sheet, work ?? Enough(sheet.Bound.Sheet)).Table();

    /// <summary>The line for a case whose every fact is known; null when the case is impossible.</summary>
    public Cell? At(ReadOnlySpan<int> facts)
    {
        for (var t = 0; t < facts.Length; t++) if ((Sheet.Domain[t] >> facts[t] & 1) == 0) return null;
        return Line(facts) is >= 0 and var line ? Cells[line] : null;
    }

    /// <summary>The number of the line for a case, or -1 when it is impossible. Values must be ones the code allows.</summary>
    public int Line(ReadOnlySpan<int> facts)
    {
        var walk = Walk;
        var node = walk[0];
        while (node >= 0)
        {
            if (node == Impossible) return -1;
            node = walk[node + 1 + facts[walk[node]]];
        }
        return ~node;
    }

    /// <summary>How many cases a line stands for.</summary>
    public static BigInteger Count(ulong[] facts)
    {
        var count = BigInteger.One;
        foreach (var mask in facts) count *= BitOperations.PopCount(mask);
        return count;
    }

    public BigInteger Cases => Cells.Aggregate(BigInteger.Zero, (sum, c) => sum + Count(c.Facts));

    /// <summary>How many different rulings the sheet can give: distinct values of its own decisions together.</summary>
    public int DistinctRulings
    {
        get
        {
            var own = OwnDecisions;
            return Cells.Select(c => string.Join(',', own.Select(d => c.Values[d]))).Distinct().Count();
        }
    }

    /// <summary>Places in <see cref="Cell.Values"/> of the decisions that are the sheet's own.</summary>
    public int[] OwnDecisions => ownDecisions ??= [.. Sheet.Bound.OwnDecisions.Select(d => d.Index - Sheet.FactCount)];

    private int[]? ownDecisions;
}
