using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>
/// Reads the text of a sheet, line by line, and reports every fault at once. The language is described in codes/GUIDE.md.
/// </summary>
public sealed class SheetReader
{
    private enum Part { Head, Moments, Facts, Impossible, Uses, Decides, Parameter, Must, Rules, Effects }

    private const int MostTerms = 250;

    private readonly string file;
    private readonly Roster roster;
    private readonly List<Finding> findings;
    private readonly Sheet sheet;
    private readonly ClauseReader clauses;
    private Part part = Part.Head;
    private Term? term;
    private Parameter? parameter;

    private SheetReader(string file, int length, Roster roster, List<Finding> findings)
    {
        (this.file, this.roster, this.findings) = (file, roster, findings);
        sheet = new() { File = file, Length = length };
        clauses = new(file, null, roster, findings);
    }

    public static Sheet Read(string file, string text, Roster roster, List<Finding> findings)
    {
        var reader = new SheetReader(file, text.Length, roster, findings);
        foreach (var line in SourceLine.Of(text)) reader.Line(line);
        reader.Finish();
        return reader.sheet;
    }

    private void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, file, line, message));

    private void Line(SourceLine line)
    {
        if (Heading(line)) return;
        switch (part)
        {
            case Part.Head: Head(line); break;
            case Part.Moments: sheet.Moments.Add(new([.. line.Text.Split('|').Select(m => m.Trim())], line.Number)); break;
            case Part.Facts: Fact(line); break;
            case Part.Impossible: ClauseLine(line, sheet.Impossible, "I1: title"); break;
            case Part.Uses: UseLine(line); break;
            case Part.Decides: if (TermLine(line) is { } decision) sheet.Decisions.Add(decision); break;
            case Part.Parameter: ParameterLine(line); break;
            case Part.Must: MustLine(line); break;
            case Part.Effects: EffectsLine(line); break;
            case Part.Rules: if (!clauses.Line(line)) Unreadable(line, "a line of a rule begins with cite, when, and, then, reason, prevails over or open to"); break;
        }
    }

    private void Unreadable(SourceLine line, string allowed) => Fault(FindingKind.UnreadableLine, line.Number, $"cannot read '{line.Short}'; {allowed}");

    private bool Heading(SourceLine line)
    {
        Part? next = line.Text switch
        {
            "Moments" => Part.Moments, "Facts" => Part.Facts, "Impossible" => Part.Impossible, "Uses" => Part.Uses, "Decides" => Part.Decides, "Must" => Part.Must, "Effects" => Part.Effects, _ => null,
        };
        if (next is { } heading) { Enter(heading); return true; }
        if (line.Text.StartsWith("Parameter ", StringComparison.Ordinal)) { Enter(Part.Parameter); NewParameter(line); return true; }
        if (line.Text.StartsWith("Rule ", StringComparison.Ordinal))
        {
            Enter(Part.Rules);
            if (clauses.Begin(line, line.Text[5..], "Rule R1: title") is { } rule) sheet.Rules.Add(rule);
            return true;
        }
        if (line.Text.StartsWith("Must ", StringComparison.Ordinal)) { Enter(Part.Must); MustLine(line with { Text = line.Text[5..] }); return true; }
        if (part != Part.Rules || !line.Text.StartsWith("Except ", StringComparison.Ordinal)) return false;
        clauses.BeginException(line);
        return true;
    }

    private void Enter(Part next)
    {
        part = next;
        term = null;
        clauses.Close();
    }

    private void Head(SourceLine line)
    {
        var (key, value) = Split(line.Text, ':');
        switch (key)
        {
            case "Sheet" when value != "": sheet.Name = value; break;
            case "group" when value != "": sheet.Group = value; break;
            case "about": sheet.About = value; break;
            case "see also": break;
            case "for" when roster.Games.Contains(value): sheet.OnlyFor = value; break;
            default: Unreadable(line, "a sheet begins with 'Sheet: name', 'group: name' and 'about: one sentence'"); break;
        }
    }

    private void Fact(SourceLine line)
    {
        if (term is not null && line.Text.StartsWith("ask:", StringComparison.Ordinal)) { term.Question = line.Text[4..].Trim(); return; }
        if (term is not null && line.Text.StartsWith("number of ", StringComparison.Ordinal)) { NumberLine(line); return; }
        if (term is not null && line.Text.StartsWith("usually:", StringComparison.Ordinal)) { UsualLine(line); return; }
        if (term is not null && line.Text is ("choice of: offence" or "choice of: defence")) { term.ChoiceOf = line.Text["choice of: ".Length..]; return; }
        if (term is not null && line.Text.StartsWith("told by ", StringComparison.Ordinal)) { TellingLine(line); return; }
        if (term is not null && line.Text.StartsWith("edges:", StringComparison.Ordinal)) { EdgesLine(line); return; }
        if (TermLine(line) is not { } fact) return;
        term = fact;
        sheet.Facts.Add(fact);
    }

    private void UsualLine(SourceLine line)
    {
        var value = line.Text["usually:".Length..].Trim();
        term!.Usually = term.Values.FirstOrDefault(v => Words.Same(v, value));
        if (term.Usually is null) Fault(FindingKind.UnknownWord, line.Number, $"'{term.Name}' has no value '{value}'; {Words.Offer(value, term.Values)}");
        if (sheet.Group == "safety") Fault(FindingKind.ForbiddenChange, line.Number, "where somebody can be hurt nothing is taken as usual; leave the fact to be asked");
    }

    /// <summary>"told by VALUE: one moment, then another".</summary>
    private void TellingLine(SourceLine line)
    {
        var (value, moments) = Split(line.Text["told by ".Length..], ':');
        var known = term!.Values.FirstOrDefault(v => Words.Same(v, value));
        if (value == "" || moments == "") Unreadable(line, "write 'told by VALUE: one moment, then another'");
        else if (known is null) Fault(FindingKind.UnknownWord, line.Number, $"'{term.Name}' has no value '{value}'; {Words.Offer(value, term.Values)}");
        else term.ToldBy.Add(new(known, [.. moments.Split(", then ").Select(m => m.Trim())], line.Number));
    }

    private void NumberLine(SourceLine line)
    {
        var words = line.Text["number of ".Length..].Split(" from ");
        if (words.Length == 2 && words[1].Split(" to ") is [var low, var high]
            && double.TryParse(low, NumberStyles.Float, CultureInfo.InvariantCulture, out var from)
            && double.TryParse(high, NumberStyles.Float, CultureInfo.InvariantCulture, out var to) && from < to && double.IsFinite(from) && double.IsFinite(to))
            term!.Band = new(Quantity.Plural(words[0].Trim()), from, to);
        else Unreadable(line, "write 'number of pitches from 0 to 300'");
    }

    private void EdgesLine(SourceLine line)
    {
        if (term!.Band is null) { Unreadable(line, "first say 'number of UNIT from LOW to HIGH'"); return; }
        foreach (var edge in line.Text["edges:".Length..].Split(',')) Edge(term.Band, edge.Trim(), line);
        if (term.Band.Edges.Count == term.Values.Count - 1 && term.Ordered) return;
        var edges = term.Band.Edges.Count;
        term.Band = null;
        Fault(FindingKind.ImpossibleValue, line.Number, $"'{term.Name}' has {term.Values.Count} bands and {edges} edges; bands are written in order with '<', with one edge between neighbours");
    }

    /// <summary>"[limit]", "above [limit]", or "[distance] within 1 in", which is two edges.</summary>
    private void Edge(Band band, string text, SourceLine line)
    {
        var within = text.IndexOf(" within ", StringComparison.Ordinal);
        if (within < 0)
        {
            var above = text.StartsWith("above ", StringComparison.Ordinal);
            band.Edges.Add(new(above ? text["above ".Length..].Trim() : text, 0, above));
            return;
        }
        if (!Quantity.TryRead(text[(within + 8)..], out var grace) || grace.IsNone || (grace.Unit != band.Unit && (grace.Unit, band.Unit) != ("in", "ft")))
        {
            Unreadable(line, $"write '[distance] within 1 {band.Unit}'");
            return;
        }
        var offset = grace.Unit == band.Unit ? grace.Value : grace.Value / 12;
        band.Edges.Add(new(text[..within].Trim(), -offset, false));
        band.Edges.Add(new(text[..within].Trim(), offset, true));
    }

    /// <summary>"decision is value and decision is value: one effect, another".</summary>
    private void EffectsLine(SourceLine line)
    {
        var (when, effects) = Split(line.Text, ':');
        if (when == "" || effects == "") { Unreadable(line, "write 'decision is value: effect, effect'"); return; }
        List<string> words = [.. effects.Split(',').Select(e => e.Trim())];
        foreach (var word in words.Where(w => !EffectWords.All.Contains(w)))
            Fault(FindingKind.UnknownWord, line.Number, $"there is no effect '{word}'; {Words.Offer(word, EffectWords.All)}: {Words.Or(EffectWords.All)}");
        sheet.Effects.Add(new([.. when.Split(" and ").Select(w => w.Trim())], words, line.Number));
    }

    private void UseLine(SourceLine line)
    {
        var at = line.Text.IndexOf(" from ", StringComparison.Ordinal);
        if (at <= 0) { Unreadable(line, "write 'DECISION from SHEET'"); return; }
        sheet.Uses.Add(new(line.Text[..at], line.Text[(at + 6)..], line.Number));
    }

    private Term? TermLine(SourceLine line)
    {
        var (name, text) = Split(line.Text, ':');
        var ordered = text.Contains('<');
        if (name == "" || text == "" || (ordered && text.Contains('|'))) { Unreadable(line, "write 'name : value | value', or 'name : value < value' when the order counts"); return null; }
        if (text.StartsWith("number of ", StringComparison.Ordinal)) { Unreadable(line, "name the bands first, in order: 'name : too few < enough', then 'number of … from … to …' and 'edges: …' under it"); return null; }
        var values = text.Split(ordered ? '<' : '|').Select(v => v.Trim()).ToList();
        if (values.Any(v => v == "")) { Fault(FindingKind.BlankCell, line.Number, $"a value of '{name}' is blank"); return null; }
        if (values.Count > 60) { Fault(FindingKind.ImpossibleValue, line.Number, $"'{name}' has {values.Count} values; at most 60 can be told apart"); return null; }
        var twice = values.GroupBy(v => v, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null) { Fault(FindingKind.ImpossibleValue, line.Number, $"'{name}' has the value '{twice.Key}' twice"); return null; }
        return new(name, values, ordered, line.Number);
    }

    private void NewParameter(SourceLine line)
    {
        var (name, text) = Split(line.Text["Parameter ".Length..], ':');
        parameter = null;
        if (name == "" || text == "") { Unreadable(line, "write 'Parameter name : value | value' or 'Parameter name : number of ft'"); return; }
        var unit = text.StartsWith("number of ", StringComparison.Ordinal) ? Quantity.Plural(text["number of ".Length..].Trim()) : null;
        IReadOnlyList<string> values = unit is null ? [.. text.Split(text.Contains('<') ? '<' : '|').Select(v => v.Trim())] : [];
        if (values.Any(v => v == "")) { Fault(FindingKind.BlankCell, line.Number, $"a value of '{name}' is blank"); return; }
        parameter = new() { Name = name, Sheet = sheet.Name, Values = values, Unit = unit, Line = line.Number };
        if (sheet.Parameters.Any(p => Words.Same(p.Name, name))) Fault(FindingKind.ImpossibleValue, line.Number, $"there is a second parameter '{name}'");
        else sheet.Parameters.Add(parameter);
    }

    private void ParameterLine(SourceLine line)
    {
        var (key, value) = Split(line.Text, ':');
        if (!line.Text.Contains('=') && key == "open to")
        {
            if (parameter is null) return;
            if (Words.TryName<LayerKind>(value, out var kind)) parameter.OpenTo = kind;
            else Unreadable(line, "a parameter is open to book, district, league or game");
            return;
        }
        if (!line.Text.Contains('=') && key == "used by") { if (parameter is not null) parameter.UsedBy = value; return; }
        if (ValueReader.Read(file, line, parameter, roster, gameNeeded: true, findings) is { } read) parameter?.Lines.Add(read);
    }

    private void MustLine(SourceLine line)
    {
        if (line.Text[0] == '[' && sheet.Musts.Count > 0 && sheet.Musts[^1].Text == "") { sheet.Musts[^1] = sheet.Musts[^1] with { Text = line.Text }; return; }
        var (id, title) = Split(line.Text, ':');
        if (id == "" || title == "" || id.Contains('[')) { Unreadable(line, "write 'M1: title', then '[value] < [value]'"); return; }
        sheet.Musts.Add(new(id, title, "", line.Number));
    }

    private void ClauseLine(SourceLine line, List<Clause> into, string form)
    {
        if (clauses.Line(line)) return;
        if (clauses.Begin(line, line.Text, form) is { } clause) into.Add(clause);
    }

    private void Finish()
    {
        clauses.Close();
        if (sheet.Name == "") Fault(FindingKind.UnreadableLine, 0, "the sheet has no name; begin with 'Sheet: name'");
        if (sheet.Decisions.Count == 0) Fault(FindingKind.UnreadableLine, 0, "the sheet decides nothing; write 'Decides' and at least one decision");
        if (sheet.Facts.Count + sheet.Decisions.Count > MostTerms) Fault(FindingKind.TooEntangled, 0, $"the sheet has {sheet.Facts.Count + sheet.Decisions.Count} facts and decisions; at most {MostTerms} can be proven together; split it");
        if (sheet.Rules.Count == 0) Fault(FindingKind.UnreadableLine, 0, "the sheet has no rule");
        foreach (var fact in sheet.Facts.Where(f => string.IsNullOrEmpty(f.Question)))
            Fault(FindingKind.MissingQuestion, fact.Line, $"the fact '{fact.Name}' has no question; add 'ask: …' under it");
        foreach (var fact in sheet.Facts.Where(f => f.Band is { Edges.Count: 0 }))
            Fault(FindingKind.BlankCell, fact.Line, $"'{fact.Name}' is a number without edges; add 'edges: [parameter], …'");
        foreach (var must in sheet.Musts.Where(m => m.Text == "")) Fault(FindingKind.BlankCell, must.Line, $"{must.Id} says nothing; write '[value] < [value]' under it");
        foreach (var rule in sheet.Rules) Cited(rule, rule.Id);
        var names = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var term in sheet.Facts.Concat(sheet.Decisions)) Once(names, term.Name, term.Line, "name");
        var ids = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var clause in sheet.Rules.Concat(sheet.Rules.SelectMany(r => r.Exceptions)).Concat(sheet.Impossible)) Once(ids, clause.Id, clause.Line, "id");
    }

    private void Cited(Clause clause, string id)
    {
        if (clause.Cites.Count == 0) Fault(FindingKind.MissingCitation, clause.Line, $"{id} has no source; add 'cite: source | status'");
        if (clause.Then.Count == 0) Fault(FindingKind.BlankCell, clause.Line, $"{id} decides nothing; add 'then … is …'");
        foreach (var exception in clause.Exceptions) Cited(exception, exception.Id);
    }

    private void Once(Dictionary<string, int> seen, string name, int line, string what)
    {
        if (!seen.TryAdd(name, line)) Fault(FindingKind.ImpossibleValue, line, $"the {what} '{name}' stands twice; the first is in line {seen[name]}");
    }

    internal static (string Before, string After) Split(string text, char at)
    {
        var i = text.IndexOf(at);
        return i < 0 ? ("", "") : (text[..i].Trim(), text[(i + 1)..].Trim());
    }
}
