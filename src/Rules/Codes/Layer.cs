using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>A published rule body whose book may be laid on a game: its name in addresses and other names it has gone by.</summary>
public sealed record Body(string Name, string Game, string Title, IReadOnlyList<string> Aliases);

/// <summary>
/// A local layer: a district's or a league's options, or the agreement for one game. It may only fill what the layer below leaves open.
/// </summary>
public sealed class Layer
{
    public required string Name { get; init; }
    public required string File { get; init; }
    public LayerKind Kind { get; set; }
    public string? On { get; set; }
    public string Title { get; set; } = "";
    public List<Change> Changes { get; } = [];
    public List<Addition> Additions { get; } = [];
    /// <summary>For an agreement between leagues: whose layer governs which parameter.</summary>
    public List<Deferral> Deferrals { get; } = [];
}

/// <summary>A layer's own values for one parameter of one sheet.</summary>
public sealed record Change(string Sheet, string Parameter, IReadOnlyList<ValueLine> Lines, int Line);

/// <summary>A layer's exception to one rule of one sheet.</summary>
public sealed record Addition(string Sheet, string Rule, Clause Exception, int Line);

/// <summary>An agreement takes a parameter from the host's or the visitor's layer; a null parameter means everything.</summary>
public sealed record Deferral(string From, string? Sheet, string? Parameter, int Line);
