using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Gear;

/// <summary>Looks gear over: every fault found on a piece is ruled by its sheet alone, so that one does not hide another, and all together for what it costs.</summary>
public sealed class Inspector
{
    private readonly Codebook book;
    private readonly Code code;
    private readonly GearFile list;
    private readonly string file;
    private readonly List<Finding> findings;
    private readonly Dictionary<string, Table?> tables = [];

    private Inspector(Codebook book, Code code, GearFile list, string file, List<Finding> findings) =>
        (this.book, this.code, this.list, this.file, this.findings) = (book, code, list, file, findings);

    /// <summary>What comes of every piece; null, with every reason, when the code or something said of a piece cannot be read.</summary>
    public static IReadOnlyList<Looked>? Inspect(Codebook book, GearFile list, string file, DateOnly today, List<Finding> findings)
    {
        var before = findings.Count;
        if (Casebook.Code(book, list.Code, today, m => findings.Add(new(FindingKind.UnknownWord, file, 0, m))) is not { } code) return null;
        var inspector = new Inspector(book, code, list, file, findings);
        List<Looked> looked = [.. list.Items.Select(inspector.Look).OfType<Looked>()];
        return findings.Count > before ? null : looked;
    }

    private Table? Table(string sheet)
    {
        if (!tables.TryGetValue(sheet, out var table)) tables[sheet] = table = Casebook.Table(book, code.Address.ToString(), sheet, code.Date, file, findings);
        return table;
    }

    private Looked? Look(GearItem item)
    {
        var before = findings.Count;
        if (Table(item.Kind.Sheet) is not { } table || (item.Kind.Measured is { } m && Table(m.Sheet) is null)) return null;
        var (remarks, reasons) = (new List<Remark>(), new List<GearReason>());
        string? mark = null;
        if (item.Marks is { } marks)
        {
            mark = BatMarks.Shown(code, marks, out var fault);
            if (mark is null) findings.Add(new(FindingKind.UnknownWord, file, item.Line, $"{item.Name}: {fault}"));
            else remarks.Add(new($"marks shown is {mark}", item.MarksSeen == "" ? MarkSeen(marks) : item.MarksSeen, item.Line));
        }
        var measures = item.Kind.Measured is { } sheet ? item.Remarks.Where(r => Speaks(Table(sheet.Sheet)!, r) && !Speaks(table, r)).ToList() : [];
        remarks.AddRange(item.Remarks.Except(measures));
        if (measures.Count > 0 && Measured(item.Kind.Measured!, measures, reasons) is { } wrong) remarks.Add(wrong with { Line = item.Line });

        var at = item.Kind.FoundFact is { } fact ? (list.Found == "" ? $"{fact} is {table.Sheet.Terms.First(t => t.Name == fact).Values[0]}" : $"{fact} is {list.Found}") : null;
        // what is no fault by itself (a doctor's leave, who wears it) is held beside each of the others
        var plain = remarks.Where(r => Rule(table, item, [r], at) is { } alone && Failing(item.Kind, alone) is null).ToList();
        foreach (var remark in remarks.Except(plain))
        {
            if (Rule(table, item, [remark, .. plain.Where(p => FactOf(p.Said) != FactOf(remark.Said))], at) is not { } ruling || Failing(item.Kind, ruling) is not { } failed) continue;
            if (measures.Count == 0 || remark.Said != item.Kind.Measured!.Otherwise) reasons.Add(Reason(ruling, failed, remark));
        }
        if (findings.Count > before) return null;
        var together = Choices(remarks).Select(r => Rule(table, item, r, at)).OfType<Ruling>().ToList();
        // none is left where all that was said cannot be; another piece may have been told so already
        if (findings.Count > before || together.Count == 0) return null;
        // faults that only show together
        if (reasons.Count == 0)
            reasons.AddRange(together.Select(r => (Ruling: r, Failed: Failing(item.Kind, r))).Where(r => r.Failed is not null).Select(r => Reason(r.Ruling, r.Failed!, remarks[^1])));
        var conforms = reasons.Count == 0;
        // of a piece that stays out nobody is told to let it in, and of one that conforms nothing more than that
        bool Lets(Step s) => item.Kind.Passes.Any(p => Words.Same(p, $"{s.Decision} is {s.Value}"));
        var todo = together.SelectMany(Because.Of).Where(s => s.Do is not null && Lets(s) == conforms).Select(s => s.Do!).Distinct().ToList();
        var removal = conforms || !item.Kind.Kept ? null : new Removal(CodeAddress.Day(code.Date), (code.Address with { Date = null }).ToString(), list.Title, item.Name, string.Join("; ", reasons.Select(r => r.Seen)), string.Join(", ", reasons.Select(r => $"{r.Sheet} {r.Rule}").Distinct()));
        return new(item, conforms, mark is null ? null : MarkInWords(together[0], item.Marks!), reasons, todo, conforms ? [] : Costs(table, item, remarks), [.. together.Select(r => r.InWords).Distinct()], removal);
    }

    private static string FactOf(string said) => said[..said.IndexOf(" is ", StringComparison.Ordinal)];

    private static string MarkSeen(IReadOnlyList<string> marks) => marks is ["none"] ? "no mark can be read" : $"marked {Words.And(marks)}";

    /// <summary>Carries the mark or does not, and who asks for the one it carries.</summary>
    private string MarkInWords(Ruling ruling, IReadOnlyList<string> marks)
    {
        var asked = BatMarks.Asked(code);
        if (marks.Any(m => Words.Same(m, asked))) return $"carries the mark this code asks for ({asked})";
        var others = marks.Where(m => m != "none").SelectMany(m => BatMarks.AskedElsewhere(code, m)).Distinct().ToList();
        var taken = ruling.Table.Sheet.Code.Value(ruling.Table.Sheet.Bound.Parameters.First(p => p.Name == "mark asked"))!.Value == "yes";
        return $"does not carry the mark this code {(taken ? "asks for" : "names, and it asks for none")} ({asked})" + (others.Count == 0 ? "" : $"; its mark is asked for by {Words.And(others)}");
    }

    private static bool Speaks(Table table, Remark remark) => table.Sheet.Bound.Facts.Any(f => remark.Said.StartsWith(f.Name + " is ", StringComparison.OrdinalIgnoreCase));

    /// <summary>Rules the measures; where length and weight are known, the drop is worked out. What the first sheet is told when they are not as allowed.</summary>
    private Remark? Measured(GearMeasure measure, List<Remark> said, List<GearReason> reasons)
    {
        var table = Table(measure.Sheet)!;
        if (Number(said, "length") is { Unit: "in" } length && Number(said, "weight") is { Unit: "oz" } weight && !said.Any(r => r.Said.StartsWith("drop is ", StringComparison.Ordinal)))
            said = [.. said, new(FormattableString.Invariant($"drop is {Math.Max(0, length.Value - weight.Value):0.###}"), FormattableString.Invariant($"{length.Value:0.###} in long and {weight.Value:0.###} oz"), said[0].Line)];
        var wrong = new List<Remark>();
        foreach (var remark in said)
        {
            // of solid wood or not: that is no fault, and it changes how the others are ruled
            List<Remark> with = [remark, .. said.Where(r => r != remark && r.Said.StartsWith("bat material is ", StringComparison.Ordinal))];
            if (Rule(table, measure.Within, with) is not { } alone) continue;
            if (alone.Decisions.Select(d => $"{d.Term.Name} is {d.Values[0]}").Contains(measure.Passes)) continue;
            wrong.Add(remark);
            var size = alone.Decisions.First(d => d.Values[0] == "not as allowed");
            reasons.Add(Reason(alone, size, remark));
        }
        return wrong.Count == 0 ? null : new(measure.Otherwise, string.Join("; ", wrong.Select(w => w.Said)), 0);
    }

    private static Quantity? Number(List<Remark> said, string fact) =>
        said.FirstOrDefault(r => r.Said.StartsWith(fact + " is ", StringComparison.Ordinal)) is { } r && Quantity.TryRead(r.Said[(fact.Length + 4)..], out var q) ? q : null;

    /// <summary>Where one fact was found in two ways, each is taken in turn with the rest.</summary>
    private static List<List<Remark>> Choices(IReadOnlyList<Remark> remarks)
    {
        List<List<Remark>> all = [[]];
        foreach (var fact in remarks.GroupBy(r => FactOf(r.Said), StringComparer.OrdinalIgnoreCase))
            all = [.. all.SelectMany(before => fact.DistinctBy(r => r.Said).Select(r => before.Append(r).ToList()))];
        return all;
    }

    private Ruling? Rule(Table table, GearItem item, IReadOnlyList<Remark> remarks, string? found) =>
        Rule(table, found is null ? item.Kind.Sound : [.. item.Kind.Sound, found], remarks);

    private Ruling? Rule(Table table, IReadOnlyList<string> sound, IReadOnlyList<Remark> remarks)
    {
        var before = findings.Count;
        var kept = sound.Where(s => !remarks.Any(r => Words.Same(FactOf(r.Said), FactOf(s))));
        List<Phrase> phrases = [.. kept.Select(s => new Phrase(Because.Fill(table.Sheet, s), 0)), .. remarks.Select(r => new Phrase(r.Said, r.Line))];
        var situation = Situation.Read(table.Sheet, file, phrases, findings);
        if (findings.Count > before)
        {
            // the same remark is ruled more than once, and told once
            foreach (var twice in findings.Skip(before).Where(f => findings.IndexOf(f) < before).ToList()) findings.RemoveAt(findings.LastIndexOf(twice));
            return null;
        }
        var ruling = Umpire.Rule(table, situation);
        if (!ruling.IsPossible && new Finding(FindingKind.ImpossiblePlay, file, remarks.Count > 0 ? remarks[0].Line : 0, ruling.InWords) is var cannot && !findings.Contains(cannot)) findings.Add(cannot);
        return ruling.IsPossible ? ruling : null;
    }

    /// <summary>The first decision that does not let the piece in.</summary>
    private static Decided? Failing(GearKind kind, Ruling ruling)
    {
        foreach (var pass in kind.Passes)
        {
            var (name, value) = GearKind.Apart(pass, own => own);
            if (ruling.Find(name) is { } decided && !(decided.Values.Count == 1 && Words.Same(decided.Values[0], value))) return decided;
        }
        return null;
    }

    /// <summary>The step that says why: the last exception that speaks of the very fact that was found, otherwise the last exception of all.</summary>
    private static GearReason Reason(Ruling ruling, Decided failed, Remark remark)
    {
        var steps = Because.Of(ruling);
        var exceptions = steps.Where(s => Exceptional(ruling, s)).ToList();
        var fact = ruling.Table.Sheet.Bound.Facts.First(f => remark.Said.StartsWith(f.Name + " is ", StringComparison.OrdinalIgnoreCase)).Name;
        var named = exceptions.LastOrDefault(s => s.Since.Any(since => since.StartsWith(fact + " is", StringComparison.Ordinal))) ?? exceptions.LastOrDefault() ?? steps.First(s => s.Decision == failed.Term.Name);
        return new(remark.Seen == "" ? remark.Said : remark.Seen, named.Title, named.Rule, ruling.Table.Sheet.Bound.Sheet.Name, named.Source);
    }

    private static bool Exceptional(Ruling ruling, Step step) =>
        ruling.Table.Sheet.Bound.Clauses.First(c => c.Id == step.Rule).Parent >= 0;

    private List<GearCost> Costs(Table table, GearItem item, IReadOnlyList<Remark> remarks)
    {
        if (item.Kind.FoundFact is not { } fact) return [];
        var costs = new List<GearCost>();
        foreach (var when in table.Sheet.Bound.Facts.First(f => f.Name == fact).Values)
            foreach (var choice in Choices(remarks))
                if (Rule(table, item, choice, $"{fact} is {when}") is { } ruling)
                    costs.Add(new(when, [.. ruling.Announced.Where(d => !item.Kind.Passes[0].StartsWith(d.Term.Name + " is ", StringComparison.Ordinal) && !Inner.Contains(d.Term.Name)).Select(d => d.InWords)]));
        return costs;
    }

    /// <summary>Decisions on the way to others, which cost nobody anything.</summary>
    private static readonly string[] Inner = ["mark on the bat", "class of bat", "coach's second bat"];
}
