using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>A parameter's value in one code, with the layer and the line it came from.</summary>
public sealed record Provenance(string Value, Quantity? Quantity, Citation Citation, string Layer, string File, int Line);

/// <summary>
/// One code on one day: a game, a division, a body's book if any, and the local layers from the district up. Every value is asked of the
/// topmost layer first; a layer that is silent falls through to the one below.
/// </summary>
public sealed class Code
{
    public required CodeAddress Address { get; init; }
    public required Codebook Book { get; init; }
    public required string Game { get; init; }
    public required string Division { get; init; }
    public required Body? Body { get; init; }
    public required DateOnly Date { get; init; }
    /// <summary>Local layers, lowest first. A game's agreement comes last.</summary>
    public required IReadOnlyList<Layer> Stack { get; init; }
    /// <summary>Host first: the leagues between which an agreement decides. Their own layers speak only where it lets them.</summary>
    public required IReadOnlyList<Layer> Parties { get; init; }

    /// <summary>Takes a code by its address. Null, with every reason, when the address names something that is not there.</summary>
    public static Code? Of(Codebook book, CodeAddress address, DateOnly today, List<string> faults)
    {
        var before = faults.Count;
        var roster = book.Roster;
        var (game, division) = (address.Game, address.Division);
        if (!roster.Games.Contains(game)) faults.Add($"there is no game '{game}'; {Words.Offer(game, roster.Games)}");
        if (!roster.Divisions.Contains(division)) faults.Add($"there is no division '{division}'; {Words.Offer(division, roster.Divisions)}");
        Body? body = null;
        var stack = new List<Layer>();
        var parties = new List<Layer>();
        foreach (var named in address.Layers)
        {
            if (named.Arguments.Count == 0 && roster.Body(game, named.Name) is { } known)
            {
                if (body is not null && body != known) faults.Add($"a game is played under one book; both {body.Name} and {known.Name} are named");
                body = known;
                continue;
            }
            Climb(named.Name, stack, 0);
            foreach (var party in named.Arguments)
                if (book.Layer(party) is { } layer) parties.Add(layer); else Unknown(party);
        }
        if (faults.Count > before) return null;
        return new()
        {
            Address = address with { Date = address.Date ?? today }, Book = book, Game = game, Division = division, Body = body,
            Date = address.Date ?? today, Stack = Lowest(stack), Parties = parties,
        };

        void Climb(string name, List<Layer> into, int depth)
        {
            if (roster.Body(game, name) is { } book_) { body ??= book_; return; }
            if (book.Layer(name) is not { } layer) { Unknown(name); return; }
            if (into.Contains(layer)) return;
            if (depth > 8) { faults.Add($"the layer '{name}' stands on itself"); return; }
            if (layer.On is { } on) Climb(on, into, depth + 1);
            into.Add(layer);
        }

        void Unknown(string name)
        {
            List<string> known = [.. roster.Bodies.Where(b => b.Game == game).Select(b => b.Name), .. book.Layers.Select(l => l.Name)];
            faults.Add($"there is no layer '{name}' for {game}; {Words.Offer(name, known)}");
        }
    }

    private static List<Layer> Lowest(List<Layer> stack)
    {
        stack.Sort((a, b) => a.Kind - b.Kind);
        return stack;
    }

    /// <summary>The layers named in answers, lowest first.</summary>
    public IEnumerable<string> LayerNames => [Body is null ? $"{Game} at large" : Body.Title, .. Stack.Select(l => l.Title is "" ? l.Name : l.Title)];

    /// <summary>What the code says of a parameter; null when it says nothing.</summary>
    public Provenance? Value(Parameter parameter)
    {
        for (var i = Stack.Count - 1; i >= 0; i--)
        {
            var layer = Stack[i];
            if (layer.Deferrals.Count > 0 && Deferred(layer, parameter) is { } from)
            {
                var party = from switch { "host" => Parties.ElementAtOrDefault(0), "visitor" => Parties.ElementAtOrDefault(1), _ => null };
                if (party is not null && From(party, parameter) is { } value) return value;
            }
            if (From(layer, parameter) is { } own) return own;
        }
        return Best(parameter.Lines) is { } line
            ? new(line.Value, line.Quantity, line.Citation, LayerOf(line), Book.Sheet(parameter.Sheet)?.File ?? "", line.Line) : null;
    }

    private string LayerOf(ValueLine line) => line.Scope.Body is { } body ? Book.Roster.Body(Game, body)?.Title ?? body : $"{Game} at large";

    private static string? Deferred(Layer agreement, Parameter parameter) =>
        (agreement.Deferrals.FirstOrDefault(d => d.Parameter is not null && Words.Same(d.Sheet!, parameter.Sheet) && Words.Same(d.Parameter, parameter.Name))
         ?? agreement.Deferrals.FirstOrDefault(d => d.Parameter is null))?.From;

    private Provenance? From(Layer layer, Parameter parameter)
    {
        if (layer.Kind > parameter.OpenTo) return null;
        foreach (var change in layer.Changes)
            if (Words.Same(change.Sheet, parameter.Sheet) && Words.Same(change.Parameter, parameter.Name) && Best(change.Lines) is { } line
                && ValueReader.Checked(layer.File, line.Line, parameter, line.Value, []) is { } value)
                return new(value.Value, value.Quantity, line.Citation, layer.Title is "" ? layer.Name : layer.Title, layer.File, line.Line);
        return null;
    }

    /// <summary>Among the lines in force: a book's own before the game at large, a division's before all, then the latest, then the one that ends.</summary>
    private ValueLine? Best(IEnumerable<ValueLine> lines)
    {
        ValueLine? best = null;
        foreach (var line in lines)
            if (line.Scope.Holds(Game, Division, Body?.Name, Date) && (best is null || Order(line.Scope).CompareTo(Order(best.Scope)) > 0)) best = line;
        return best;
    }

    private static (int, DateOnly, int) Order(Scope scope) =>
        (scope.Rank, scope.From ?? DateOnly.MinValue, -(scope.Until ?? DateOnly.MaxValue).DayNumber);

    /// <summary>
    /// The citation that fits this code best: its own book's, then its game's, then any. A book of another game proves nothing here, and is named as one by analogy.
    /// </summary>
    public Citation Cite(Clause clause)
    {
        var best = clause.Cites.Where(c => c.Scope is null || c.Scope.Holds(Game, Division, Body?.Name, Date))
            .OrderByDescending(c => c.Scope is null ? 0 : 1 + c.Scope.Rank).Select(c => c.Citation).FirstOrDefault()
            ?? clause.Cites.Select(c => c.Citation).FirstOrDefault() ?? new("no source given", Standing.FromMemory);
        return Book.Roster.GameOf(best.Source) is { } other && other != Game ? new($"{best.Source}, {other}, by analogy", Standing.CommonPractice) : best;
    }
}
