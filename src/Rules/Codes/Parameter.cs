using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>How high in the stack a layer stands. A parameter is open to one kind, and so to every kind below it.</summary>
public enum LayerKind { Book, District, League, Game }

/// <summary>A value the code leaves to game, division, body and date. Either one of <see cref="Values"/> or a number of <see cref="Unit"/>.</summary>
public sealed class Parameter
{
    public required string Name { get; init; }
    public required string Sheet { get; init; }
    public required IReadOnlyList<string> Values { get; init; }
    public string? Unit { get; init; }
    public required int Line { get; init; }
    public LayerKind OpenTo { get; set; } = LayerKind.Book;
    public string? UsedBy { get; set; }
    public List<ValueLine> Lines { get; } = [];
}

/// <summary>One value of a parameter with where it holds and where it comes from.</summary>
public sealed record ValueLine(Scope Scope, string Value, Quantity? Quantity, Citation Citation, int Line);

/// <summary>Where a value holds: a game, perhaps one body's book, some divisions, and a span of days (both ends included).</summary>
public sealed record Scope(string? Game, string? Body, IReadOnlyList<string> Divisions, DateOnly? From, DateOnly? Until)
{
    public bool Holds(string game, string division, string? body, DateOnly date) =>
        (Game is null || Game == game) && (Body is null || Body == body) && (Divisions.Count == 0 || Divisions.Contains(division))
        && (From is null || From <= date) && (Until is null || date <= Until);

    /// <summary>A book's own line counts before the game at large; then a line for the division before one for all.</summary>
    public int Rank => (Body is null ? 0 : 2) + (Divisions.Count == 0 ? 0 : 1);
}
