using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Reads rules, exceptions and impossible combinations, a line at a time.</summary>
internal sealed class ClauseReader(string file, string? layer, Roster roster, List<Finding> findings)
{
    private Clause? rule;
    private Clause? clause;
    private bool thenSaid;

    public void Close() => (rule, clause, thenSaid) = (null, null, false);

    /// <summary>Begins a rule from "ID: title"; null and a finding when it cannot be read.</summary>
    public Clause? Begin(SourceLine line, string text, string form)
    {
        var made = Make(line, text, form);
        rule = clause = made ?? Unread(line);
        return made;
    }

    /// <summary>Begins an exception inside the rule being read.</summary>
    public Clause? BeginException(SourceLine line)
    {
        if (rule is null) { Fault(line, "an exception stands inside a rule; write the rule first"); clause = null; return null; }
        var made = Make(line, line.Text["Except ".Length..], "Except R1a: title");
        clause = made ?? Unread(line);
        if (made is not null) rule.Exceptions.Add(made);
        return made;
    }

    /// <summary>Begins an exception that a layer adds to a rule of another file.</summary>
    public Clause? BeginLoose(SourceLine line) => clause = Make(line, line.Text["Except ".Length..], "Except L1: title");

    /// <summary>Stands in for a clause whose head could not be read, so that its lines are not called unreadable too.</summary>
    private Clause Unread(SourceLine line) => new() { Id = "", Title = "", Line = line.Number, File = file };

    private Clause? Make(SourceLine line, string text, string form)
    {
        thenSaid = false;
        var (id, title) = SheetReader.Split(text, ':');
        if (id != "" && title != "" && !id.Contains(' ')) return new() { Id = id, Title = title, Line = line.Number, File = file, Layer = layer };
        Fault(line, $"cannot read '{line.Short}'; write '{form}'");
        return null;
    }

    private void Fault(SourceLine line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line.Number, message));

    /// <summary>True when the line was one of a clause's own.</summary>
    public bool Line(SourceLine line)
    {
        if (clause is null) return false;
        var text = line.Text;
        if (Cut(text, "when ", out var rest)) { if (thenSaid) return false; clause.When.Add(new(rest, line.Number)); return true; }
        if (Cut(text, "then ", out rest)) { thenSaid = true; clause.Then.Add(new(rest, line.Number)); return true; }
        if (Cut(text, "and ", out rest))
        {
            if (!thenSaid && clause.When.Count == 0) return false;
            (thenSaid ? clause.Then : clause.When).Add(new(rest, line.Number));
            return true;
        }
        if (Cut(text, "reason:", out rest)) { clause.Reason = rest.Trim(); return true; }
        if (Cut(text, "do:", out rest)) { clause.Do = rest.Trim(); return true; }
        if (Cut(text, "prevails over:", out rest)) { clause.PrevailsOver.AddRange(rest.Split(',').Select(i => i.Trim()).Where(i => i != "")); return true; }
        if (Cut(text, "open to:", out rest))
        {
            if (!Words.TryName<LayerKind>(rest.Trim(), out var kind)) return false;
            clause.OpenTo = kind;
            return true;
        }
        return Cut(text, "cite", out rest) && Cite(line, rest);
    }

    private bool Cite(SourceLine line, string rest)
    {
        var (scopeText, text) = SheetReader.Split(rest, ':');
        if (rest.IndexOf(':') < 0 || (rest[0] != ':' && rest[0] != ' ')) return false;
        Scope? scope = null;
        if (scopeText != "")
        {
            scope = ScopeReader.Read(scopeText, roster, gameNeeded: false, out var fault);
            if (scope is null) { findings.Add(new(FindingKind.UnknownWord, file, line.Number, fault)); return true; }
        }
        if (Citation.TryRead(text, out var citation)) clause!.Cites.Add(new(scope, citation));
        else findings.Add(new(FindingKind.MissingCitation, file, line.Number, $"a citation is written 'cite: source | status', with status one of {Citation.Allowed}"));
        if (clause!.Cites.Count == 0) clause.Cites.Add(new(null, new("no source given", Standing.FromMemory)));
        return true;
    }

    private static bool Cut(string text, string start, out string rest)
    {
        rest = text.StartsWith(start, StringComparison.Ordinal) ? text[start.Length..] : "";
        return rest != "";
    }
}
