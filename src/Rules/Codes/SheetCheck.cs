using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Checks one sheet: its values, then its logic in every code, then what is never used.</summary>
internal sealed class SheetCheck(Codebook book, Sheet sheet, List<Finding> findings)
{
    private readonly Dictionary<Clause, (bool Fired, bool Changes)> use = [];
    private readonly Dictionary<string, (Finding First, List<string> Codes)> told = [];
    private bool sound = true;
    private long left = Table.Enough(sheet);

    private void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, sheet.File, line, message));

    public void Run()
    {
        var before = findings.Count;
        Overlaps();
        MomentCheck.Check(sheet, findings);
        var plain = book.Bind(sheet, [], findings);
        // what could not be read would only make noise in the proof; a missing source or question does not
        if (plain is null || book.Findings.Any(f => f.File == sheet.File && f.Kind is not (FindingKind.MissingCitation or FindingKind.MissingQuestion))) return;
        Unused(plain);
        var seen = new HashSet<string>();
        var lines = sheet.Parameters.Sum(p => p.Lines.Count) + plain.Parameters.Count;
        foreach (var code in Checker.Codes(book, sheet))
        {
            // asking every parameter of one more code is work too
            left -= lines * 3;
            if (left < 0) { Entangled(code); break; }
            Under(code, seen);
        }
        foreach (var (first, codes) in told.Values)
            findings.Add(first with { Message = $"{first.Message} ({(codes.Count > 1 ? "for one, " : "")}under {codes[0]})" });
        if (sound && findings.Count == before) Idle(plain);
    }

    private void Under(Code code, HashSet<string> seen)
    {
        var local = new List<Finding>();
        if (book.Bind(sheet, code.Stack, local) is not { } bound) { findings.AddRange(local); sound = false; return; }
        var signature = string.Join('\n', bound.Parameters.Select(p => code.Value(p)?.Value ?? "")) + bound.Clauses.Count;
        if (!seen.Add(signature)) return;
        if (CodeSheet.Of(bound, code, local) is not { } under)
        {
            sound = false;
            foreach (var finding in local) Tell(finding with { Message = finding.Message.Replace($" for {code.Address}", "").Replace($" ({code.Address})", "") }, code);
            return;
        }
        foreach (var must in sheet.Musts) Obey(must, under);
        var table = Table.Of(under, left);
        left -= table.Work;
        if (table.TooEntangled) return;
        // a broken decision makes noise of everything after it
        foreach (var fault in table.Faults.GroupBy(f => f.Decision).FirstOrDefault() ?? Enumerable.Empty<Fault>()) Tell(Explain(under, fault), code);
        sound &= table.Faults.Count == 0;
        foreach (var clause in bound.Clauses.Where(c => c.Sheet == sheet.Name))
        {
            var (fired, changes) = use.GetValueOrDefault(clause.Clause);
            use[clause.Clause] = (fired || table.Fired[clause.Index], changes || table.Changes[clause.Index]);
        }
    }

    private void Entangled(Code code)
    {
        Tell(new(FindingKind.TooEntangled, sheet.File, 0, "the sheet is too entangled to prove; split it, or name a decision that others can use"), code);
        sound = false;
    }

    private void Tell(Finding finding, Code code)
    {
        var key = $"{finding.File}:{finding.Line}:{finding.Message}";
        if (told.TryGetValue(key, out var known)) known.Codes.Add(code.Address.ToString());
        else told[key] = (finding, [code.Address.ToString()]);
    }

    private Finding Explain(CodeSheet under, Fault fault)
    {
        var decision = under.Terms[fault.Decision];
        var entries = under.Entries[fault.Decision - under.FactCount];
        if (fault.Holding.Count == 0)
        {
            var gap = Wording.Widen(under, fault.Space, space => entries.All(e => e.Meets(space) == 0));
            return new(FindingKind.Gap, sheet.File, decision.Term.Line, $"nothing decides '{decision.Name}' when {Wording.Say(under, Shown(under, gap, fault.Decision))}");
        }
        var a = fault.Holding[0];
        var b = fault.Holding.First(e => e.Value != a.Value);
        var both = Wording.Widen(under, fault.Space, space => a.Meets(space) == 2 && b.Meets(space) == 2);
        var (clauseA, clauseB) = (under.Bound.Clauses[a.Clause], under.Bound.Clauses[b.Clause]);
        return new(FindingKind.Conflict, clauseB.Clause.File, clauseB.Clause.Line,
            $"{clauseA.Id} says {decision.Name} is {decision.Values[a.Value]}, {clauseB.Id} says {decision.Values[b.Value]}, when {Wording.Say(under, Shown(under, both, fault.Decision))}");
    }

    /// <summary>Decisions from the broken one on are not part of the situation.</summary>
    private static ulong[] Shown(CodeSheet under, ulong[] space, int decision)
    {
        var shown = (ulong[])space.Clone();
        for (var t = decision; t < shown.Length; t++) shown[t] = under.Domain[t];
        return shown;
    }

    private void Obey(Must must, CodeSheet under)
    {
        if (MustReader.Holds(must, under, out var said)) return;
        Tell(new(said is null ? FindingKind.UnreadableLine : FindingKind.ImpossibleValue, sheet.File, must.Line,
            said is null ? $"cannot read '{must.Text}'; write '[a] < [b]', '[a] = [b] x 1.4142 within 0.5 in' with numbers of one unit" : $"{must.Id}, {must.Title}: {said}"), under.Code);
        sound = false;
    }

    private void Overlaps()
    {
        foreach (var parameter in sheet.Parameters)
        {
            var taken = new Dictionary<(string?, string?, DateOnly?, DateOnly?, string), int>();
            foreach (var line in parameter.Lines)
                foreach (var division in line.Scope.Divisions.Count == 0 ? [""] : line.Scope.Divisions)
                {
                    if (taken.TryAdd((line.Scope.Game, line.Scope.Body, line.Scope.From, line.Scope.Until, division), line.Line)) continue;
                    Fault(FindingKind.Conflict, line.Line, $"'{parameter.Name}' has two values in force at once; the other is in line {taken[(line.Scope.Game, line.Scope.Body, line.Scope.From, line.Scope.Until, division)]}");
                    break;
                }
        }
    }

    private void Unused(BoundSheet bound)
    {
        var mine = bound.Clauses.Where(c => c.Sheet == sheet.Name).ToList();
        var asked = bound.Clauses.SelectMany(c => c.When).Select(w => w.Term).ToHashSet();
        foreach (var fact in bound.Facts.Where(f => f.Own && !asked.Contains(f.Index)))
            Fault(FindingKind.Unused, fact.Term.Line, $"no rule asks about the fact '{fact.Name}'");
        foreach (var used in sheet.Uses)
            if (bound.Find(used.Decision) is { } term && !mine.SelectMany(c => c.When).Any(w => w.Term == term.Index))
                Fault(FindingKind.Unused, used.Line, $"no rule asks about '{used.Decision}', which is taken from another sheet");
        var text = new HashSet<Parameter>(mine.SelectMany(c => c.When).SelectMany(w => w.Operands.Select(o => o.Parameter).Append(w.Left))
            .Concat(mine.SelectMany(c => c.Then).Select(s => s.Value.Parameter)).OfType<Parameter>());
        foreach (var parameter in sheet.Parameters.Where(p => p.UsedBy is null && !text.Contains(p)))
            if (!sheet.Facts.Any(f => f.Band?.Edges.Any(e => e.Parameter is { } name && Words.Same(name, parameter.Name)) == true))
                Fault(FindingKind.Unused, parameter.Line, $"no rule reads the parameter '{parameter.Name}'; if a plan or another part reads it, add 'used by:'");
        foreach (var decision in bound.OwnDecisions)
            foreach (var value in decision.Values)
                if (!bound.Clauses.SelectMany(c => c.Then).Where(s => s.Decision == decision.Index)
                    .Any(s => Words.Same(s.Value.Word ?? "", value) || s.Value.Parameter?.Values.Any(v => Words.Same(v, value)) == true))
                    Fault(FindingKind.Unused, decision.Term.Line, $"no rule ever sets '{decision.Name}' to '{value}'");
    }

    private void Idle(BoundSheet bound)
    {
        foreach (var clause in bound.Clauses.Where(c => c.Sheet == sheet.Name))
        {
            var (fired, changes) = use.GetValueOrDefault(clause.Clause);
            if (!fired) Fault(FindingKind.DeadRule, clause.Clause.Line, $"{clause.Id} can never hold, in any code");
            else if (!changes && clause.Parent >= 0)
                Fault(FindingKind.IdleException, clause.Clause.Line, $"{clause.Id} changes nothing: its rule says the same without it");
        }
    }
}
