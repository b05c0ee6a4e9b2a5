using System.IO.Compression;
using System.Text.Json;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>One sheet of a pack: what a phone needs to ask the questions and give the ruling, without the rules themselves.</summary>
public sealed record PackedSheet(
    string Name, string Group, IReadOnlyList<PackedTerm> Facts, IReadOnlyList<PackedTerm> Decisions, IReadOnlyList<PackedClause> Clauses, int[] Walk, int[][] Outcomes)
{
    /// <summary>The outcome for a case whose every fact is known: for each decision its value, then its clause; null when the case is impossible.</summary>
    public int[]? At(ReadOnlySpan<int> facts)
    {
        var node = Walk[0];
        while (node >= 0)
        {
            if (node == Table.Impossible) return null;
            node = Walk[node + 1 + facts[Walk[node]]];
        }
        return Outcomes[~node];
    }
}

public sealed record PackedTerm(string Name, IReadOnlyList<string> Values, string Question, double[] Edges);

public sealed record PackedClause(string Id, string Title, string Source);

/// <summary>One division's whole code on one day, compiled and compressed for a device without a signal.</summary>
public sealed record Pack(string Address, IReadOnlyList<PackedSheet> Sheets)
{
    /// <summary>Compiles every sheet that speaks of the code's game; a sheet with faults is left out and named in <paramref name="findings"/>.</summary>
    public static Pack Of(Codebook book, Code code, List<Finding> findings)
    {
        var sheets = new List<PackedSheet>();
        foreach (var sheet in book.Sheets.Where(s => s.Speaks(code.Game)).OrderBy(s => s.Name, StringComparer.Ordinal))
        {
            if (book.Bind(sheet, code.Stack, findings) is not { } bound || CodeSheet.Of(bound, code, findings) is not { } under) continue;
            var table = Table.Of(under);
            if (table.Faults.Count == 0 && !table.TooEntangled) sheets.Add(Packed(table));
            else findings.Add(new(FindingKind.Gap, sheet.File, 0, $"has gaps or conflicts under {code.Address} and is left out"));
        }
        return new(code.Address.ToString(), sheets);
    }

    private static PackedSheet Packed(Table table)
    {
        var sheet = table.Sheet;
        var outcomes = new List<int[]>();
        var numbers = new Dictionary<string, int>();
        var cellOutcome = table.Cells.Select(c =>
        {
            int[] outcome = [.. c.Values.SelectMany((v, d) => new[] { v, c.Clauses[d] })];
            var key = string.Join(',', outcome);
            if (numbers.TryGetValue(key, out var known)) return known;
            outcomes.Add(outcome);
            return numbers[key] = outcomes.Count - 1;
        }).ToArray();
        return new(sheet.Bound.Sheet.Name, sheet.Bound.Sheet.Group,
            [.. sheet.Bound.Facts.Select(f => new PackedTerm(f.Name, f.Values, f.Term.Question ?? "", sheet.Edges.GetValueOrDefault(f.Index, [])))],
            [.. sheet.Bound.Decisions.Select(d => new PackedTerm(d.Name, d.Values, "", []))],
            [.. sheet.Bound.Clauses.Select(c => new PackedClause(c.Id, c.Clause.Title, sheet.Code.Cite(c.Clause).ToString()))],
            Shared(table, cellOutcome), [.. outcomes]);
    }

    /// <summary>The walk with equal branches shared: lines that rule alike become one.</summary>
    private static int[] Shared(Table table, int[] cellOutcome)
    {
        var walk = new List<int> { 0 };
        var known = new Dictionary<string, int>();
        walk[0] = Node(table.Walk[0]);
        return [.. walk];

        int Node(int node)
        {
            if (node < 0) return ~cellOutcome[~node];
            if (node == Table.Impossible) return node;
            var term = table.Walk[node];
            var children = new int[table.Sheet.Terms[term].Values.Count];
            for (var v = 0; v < children.Length; v++) children[v] = Node(table.Walk[node + 1 + v]);
            if (Array.TrueForAll(children, c => c == children[0])) return children[0];
            var key = $"{term}:{string.Join(',', children)}";
            if (known.TryGetValue(key, out var at)) return at;
            at = walk.Count;
            walk.Add(term);
            walk.AddRange(children);
            return known[key] = at;
        }
    }

    /// <summary>Writes the pack as compressed JSON.</summary>
    public byte[] Write()
    {
        using var stream = new MemoryStream();
        using (var brotli = new BrotliStream(stream, CompressionLevel.SmallestSize, leaveOpen: true))
        using (var json = new Utf8JsonWriter(brotli)) PackJson.Write(json, this);
        return stream.ToArray();
    }

    /// <summary>Reads what <see cref="Write"/> wrote. Throws <see cref="InvalidDataException"/> when the bytes are no pack.</summary>
    public static Pack Read(byte[] bytes)
    {
        try
        {
            using var brotli = new BrotliStream(new MemoryStream(bytes), CompressionMode.Decompress);
            using var json = JsonDocument.Parse(brotli);
            return PackJson.Read(json.RootElement);
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or KeyNotFoundException)
        {
            throw new InvalidDataException("these bytes are no pack", fault);
        }
    }
}
