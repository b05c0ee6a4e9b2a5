using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Binds a sheet's words, pulls in what it uses of other sheets, and puts its decisions in order. Null when it cannot be bound.</summary>
public sealed class Binder(Func<string, Sheet?> find, List<Finding> findings)
{
    private readonly List<string> under = [];

    /// <summary>Binds one sheet, with exceptions that layers add to its rules.</summary>
    public BoundSheet? Bind(Sheet sheet, IReadOnlyList<Addition> additions)
    {
        var before = findings.Count;
        var draft = new Draft(sheet);
        foreach (var fact in sheet.Facts) draft.Add(fact, sheet.Name, decision: false, own: true);
        foreach (var use in sheet.Uses) Import(draft, use);
        if (findings.Count > before) return null;
        foreach (var decision in sheet.Decisions)
        {
            if (draft.Terms.ContainsKey(decision.Name))
                findings.Add(new(FindingKind.ImpossibleValue, sheet.File, decision.Line, $"'{decision.Name}' is a fact and a decision; give one of them another name"));
            else draft.Add(decision, sheet.Name, decision: true, own: true);
        }
        var parameters = new Dictionary<string, Parameter>(StringComparer.OrdinalIgnoreCase);
        foreach (var parameter in sheet.Parameters) parameters.TryAdd(parameter.Name, parameter);
        var reader = new ConditionReader(draft.Terms, parameters, findings);
        foreach (var clause in sheet.Impossible)
            draft.Impossible.Add(new(clause, clause.Id, sheet.Name, -1, -1, When(reader, clause), [], []));
        foreach (var rule in sheet.Rules)
        {
            var parent = AddClause(draft, reader, rule, -1, sheet.Name);
            foreach (var exception in rule.Exceptions.Concat(additions.Where(a => Words.Same(a.Rule, rule.Id)).Select(a => a.Exception)))
                AddClause(draft, reader, exception, parent, sheet.Name);
        }
        foreach (var addition in additions.Where(a => !sheet.Rules.Any(r => Words.Same(r.Id, a.Rule))))
            findings.Add(new(FindingKind.UnknownWord, addition.Exception.File, addition.Line, $"the sheet '{sheet.Name}' has no rule '{addition.Rule}'; {Words.Offer(addition.Rule, [.. sheet.Rules.Select(r => r.Id)])}"));
        Prevail(draft, sheet);
        foreach (var effect in sheet.Effects)
            draft.Effects.Add(new([.. effect.When.Select(w => reader.Condition(sheet.File, new(w, effect.Line))).OfType<Condition>()], effect.Effects, effect.Line));
        if (findings.Count > before) return null;
        return Ordered(draft, [.. sheet.Parameters]);
    }

    private sealed class Draft(Sheet sheet)
    {
        public Sheet Sheet { get; } = sheet;
        public Dictionary<string, BoundTerm> Terms { get; } = new(StringComparer.OrdinalIgnoreCase);
        public List<BoundTerm> List { get; } = [];
        public List<BoundClause> Impossible { get; } = [];
        public List<BoundClause> Clauses { get; } = [];
        public List<Parameter> Imported { get; } = [];
        public List<BoundEffect> Effects { get; } = [];

        public BoundTerm Add(Term term, string sheetName, bool decision, bool own)
        {
            var bound = new BoundTerm(term, List.Count, decision, sheetName, own);
            if (!Terms.TryAdd(term.Name, bound)) return Terms[term.Name];
            List.Add(bound);
            return bound;
        }
    }

    private static List<Condition> When(ConditionReader reader, Clause clause) =>
        [.. clause.When.Select(p => reader.Condition(clause.File, p)).OfType<Condition>()];

    private int AddClause(Draft draft, ConditionReader reader, Clause clause, int parent, string sheet)
    {
        var index = draft.Clauses.Count;
        List<Setting> then = [.. clause.Then.Select(p => reader.Setting(clause.File, p)).OfType<Setting>()];
        foreach (var twice in then.GroupBy(s => s.Decision).Where(g => g.Count() > 1))
            findings.Add(new(FindingKind.ImpossibleValue, clause.File, twice.Last().Line, $"{clause.Id} sets '{draft.List[twice.Key].Name}' twice"));
        draft.Clauses.Add(new(clause, clause.Id, sheet, index, parent, When(reader, clause), then, []));
        return index;
    }

    private void Prevail(Draft draft, Sheet sheet)
    {
        for (var i = 0; i < draft.Clauses.Count; i++)
        {
            var clause = draft.Clauses[i];
            if (clause.Sheet != sheet.Name || clause.Clause.PrevailsOver.Count == 0) continue;
            var over = new List<int>();
            foreach (var id in clause.Clause.PrevailsOver)
            {
                var other = draft.Clauses.FirstOrDefault(c => c.Sheet == sheet.Name && Words.Same(c.Id, id));
                if (other is null)
                    findings.Add(new(FindingKind.UnknownWord, clause.Clause.File, clause.Clause.Line, $"{clause.Id} prevails over '{id}', which is no rule of this sheet"));
                else over.Add(other.Index);
            }
            draft.Clauses[i] = clause with { PrevailsOver = over };
        }
        foreach (var clause in draft.Clauses.Where(c => c.PrevailsOver.Count > 0 && Reaches(draft, c.Index, c.Index)))
            findings.Add(new(FindingKind.Cycle, clause.Clause.File, clause.Clause.Line, $"{clause.Id} prevails over itself by way of others"));
    }

    private static bool Reaches(Draft draft, int from, int target)
    {
        var open = new Stack<int>(draft.Clauses[from].PrevailsOver);
        var seen = new HashSet<int>();
        while (open.TryPop(out var at))
        {
            if (at == target) return true;
            if (seen.Add(at)) foreach (var next in draft.Clauses[at].PrevailsOver) open.Push(next);
        }
        return false;
    }

    private void Import(Draft draft, Use use)
    {
        void Fault(FindingKind kind, string message) => findings.Add(new(kind, draft.Sheet.File, use.Line, message));
        var other = find(use.Sheet);
        if (other is null) { Fault(FindingKind.UnknownWord, $"there is no sheet '{use.Sheet}'"); return; }
        if (under.Contains(other.Name) || other.Name == draft.Sheet.Name) { Fault(FindingKind.Cycle, $"sheets use one another in a circle: {string.Join(" -> ", under.Append(draft.Sheet.Name).Append(other.Name))}"); return; }
        under.Add(draft.Sheet.Name);
        var silent = new List<Finding>();
        var bound = new Binder(find, silent).Within(under).Bind(other, []);
        under.RemoveAt(under.Count - 1);
        findings.AddRange(silent.Where(f => f.Kind == FindingKind.Cycle));
        if (silent.Any(f => f.Kind == FindingKind.Cycle)) return;
        if (bound is null) { Fault(FindingKind.UnknownWord, $"the sheet '{use.Sheet}' has faults of its own"); return; }
        if (bound.Find(use.Decision) is not { IsDecision: true } wanted) { Fault(FindingKind.UnknownWord, $"the sheet '{use.Sheet}' does not decide '{use.Decision}'; {Words.Offer(use.Decision, [.. bound.OwnDecisions.Select(d => d.Name)])}"); return; }

        var needed = Needed(bound, wanted.Index);
        var clauses = bound.Clauses.Where(c => c.Then.Any(s => needed.Contains(s.Decision)) || bound.Clauses.Any(e => e.Parent == c.Index && e.Then.Any(s => needed.Contains(s.Decision)))).ToList();
        var terms = clauses.SelectMany(c => c.When).Select(w => w.Term).Where(t => t >= 0).Concat(needed).Distinct().Order().ToList();
        var map = new Dictionary<int, int>();
        foreach (var index in terms)
        {
            var term = bound.Terms[index];
            if (draft.Terms.TryGetValue(term.Name, out var known) && (term.IsDecision != known.IsDecision || !term.Values.SequenceEqual(known.Values, StringComparer.OrdinalIgnoreCase)))
            {
                Fault(FindingKind.ImpossibleValue, $"'{term.Name}' means one thing here and another in '{use.Sheet}'; the values are not the same");
                return;
            }
            map[index] = draft.Add(term.Term, term.Sheet, term.IsDecision, own: false).Index;
        }
        var clauseMap = new Dictionary<int, int>();
        foreach (var clause in clauses)
        {
            var index = draft.Clauses.Count;
            if (draft.Clauses.FindIndex(c => c.Clause == clause.Clause && c.Sheet == clause.Sheet) is >= 0 and var already) { clauseMap[clause.Index] = already; continue; }
            clauseMap[clause.Index] = index;
            draft.Clauses.Add(clause with
            {
                Index = index, Parent = clause.Parent < 0 ? -1 : clauseMap.GetValueOrDefault(clause.Parent, -1),
                When = Moved(clause.When, t => map[t]),
                Then = [.. clause.Then.Where(s => needed.Contains(s.Decision)).Select(s => s with { Decision = map[s.Decision] })],
                PrevailsOver = [],
            });
        }
        foreach (var clause in clauses)
            draft.Clauses[clauseMap[clause.Index]] = draft.Clauses[clauseMap[clause.Index]] with { PrevailsOver = [.. clause.PrevailsOver.Where(clauseMap.ContainsKey).Select(p => clauseMap[p])] };
        foreach (var impossible in bound.Impossible.Where(i => i.When.All(w => w.Term < 0 || map.ContainsKey(w.Term))))
            if (!draft.Impossible.Any(i => i.Clause == impossible.Clause))
                draft.Impossible.Add(impossible with { When = Moved(impossible.When, t => map[t]) });
        var bands = terms.Select(t => bound.Terms[t].Term.Band).OfType<Band>().SelectMany(b => b.Edges).ToList();
        draft.Imported.AddRange(bound.Parameters.Where(p => !draft.Imported.Contains(p) && (Mentions(clauses, p) || bands.Any(e => e.Parameter is { } name && Words.Same(name, p.Name)))));
    }

    private Binder Within(List<string> sheets) { under.AddRange(sheets); return this; }

    private static bool Mentions(IEnumerable<BoundClause> clauses, Parameter parameter) => clauses.Any(c =>
        c.When.Any(w => w.Left == parameter || w.Operands.Any(o => o.Parameter == parameter)) || c.Then.Any(s => s.Value.Parameter == parameter));

    private static HashSet<int> Needed(BoundSheet bound, int decision)
    {
        var needed = new HashSet<int> { decision };
        var open = new Stack<int>([decision]);
        while (open.TryPop(out var at))
        {
            var on = DependsOn(bound.Clauses, at, bound.Terms.Count);
            foreach (var term in bound.Decisions) if (on[term.Index] && needed.Add(term.Index)) open.Push(term.Index);
        }
        return needed;
    }

    /// <summary>The terms on which a decision hangs: those of the clauses that set it, of their parents, and of whatever overrides them.</summary>
    private static bool[] DependsOn(IReadOnlyList<BoundClause> clauses, int decision, int terms)
    {
        var on = new bool[terms];
        foreach (var clause in clauses)
        {
            if (!clause.Then.Any(s => s.Decision == decision)) continue;
            foreach (var condition in clause.When) if (condition.Term >= 0) on[condition.Term] = true;
            if (clause.Parent < 0) continue;
            foreach (var condition in clauses[clause.Parent].When) if (condition.Term >= 0) on[condition.Term] = true;
        }
        return on;
    }

    /// <summary>The same conditions where the terms stand in other places; a parameter has none.</summary>
    private static Condition[] Moved(IReadOnlyList<Condition> conditions, Func<int, int> place) =>
        [.. conditions.Select(c => c.Term < 0 ? c : c with { Term = place(c.Term) })];

    private static bool Within(bool[] needed, bool[] done)
    {
        for (var t = 0; t < done.Length; t++) if (needed[t] && !done[t]) return false;
        return true;
    }

    private BoundSheet? Ordered(Draft draft, List<Parameter> own)
    {
        var facts = draft.List.Where(t => !t.IsDecision).ToList();
        var waiting = draft.List.Where(t => t.IsDecision).ToList();
        var order = new List<BoundTerm>(facts);
        var done = new bool[draft.List.Count];
        foreach (var fact in facts) done[fact.Index] = true;
        var depends = new bool[draft.List.Count][];
        foreach (var decision in waiting) depends[decision.Index] = DependsOn(draft.Clauses, decision.Index, done.Length);
        while (waiting.Count > 0)
        {
            var ready = waiting.Find(d => Within(depends[d.Index], done));
            if (ready is null)
            {
                var names = waiting.Select(d => d.Name).Take(4).ToList();
                findings.Add(new(FindingKind.Cycle, draft.Sheet.File, waiting[0].Term.Line, names.Count == 1 ? $"'{names[0]}' hangs on itself; a decision may use only what is decided before it" : $"{Words.And(names)} wait for one another; a decision may use only what is decided before it"));
                return null;
            }
            waiting.Remove(ready);
            done[ready.Index] = true;
            order.Add(ready);
        }
        var place = new int[order.Count];
        for (var i = 0; i < order.Count; i++) place[order[i].Index] = i;
        BoundClause InOrder(BoundClause c) => c with
        {
            When = Moved(c.When, t => place[t]),
            Then = [.. c.Then.Select(s => s with { Decision = place[s.Decision] })],
        };
        return new()
        {
            Sheet = draft.Sheet,
            Terms = [.. order.Select((t, i) => t with { Index = i })],
            FactCount = facts.Count,
            Impossible = [.. draft.Impossible.Select(InOrder)],
            Effects = [.. draft.Effects.Select(e => e with { When = Moved(e.When, t => place[t]) })],
            Clauses = [.. draft.Clauses.Select(InOrder)],
            Parameters = [.. own, .. draft.Imported],
            Moments = [.. draft.Sheet.Moments, .. draft.Sheet.Uses.Select(u => find(u.Sheet)).OfType<Sheet>().Distinct().SelectMany(s => s.Moments)],
        };
    }
}
