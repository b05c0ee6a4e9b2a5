using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>A rule sheet as it was read: one subject, both games, every division. Words are not yet bound to facts; see <see cref="Binder"/>.</summary>
public sealed class Sheet
{
    public required string File { get; init; }
    /// <summary>Length of the text it was read from: the work allowed for its proof grows with it.</summary>
    public int Length { get; init; }
    public string Name { get; set; } = "";
    public string Group { get; set; } = "";
    public string About { get; set; } = "";
    public string? OnlyFor { get; set; }
    public List<Term> Facts { get; } = [];
    public List<Term> Decisions { get; } = [];
    /// <summary>The moments of a play in which its facts can be told; the alternatives of one line exclude each other.</summary>
    public List<MomentLine> Moments { get; } = [];
    public List<Clause> Impossible { get; } = [];
    public List<Use> Uses { get; } = [];
    public List<Parameter> Parameters { get; } = [];
    public List<Must> Musts { get; } = [];
    public List<Clause> Rules { get; } = [];
    /// <summary>What the decisions do to the game.</summary>
    public List<EffectLine> Effects { get; } = [];

    public bool Speaks(string game) => OnlyFor is null || OnlyFor == game;
}

/// <summary>A fact or a decision: a name and the values it may take, in order when <paramref name="Ordered"/>.</summary>
public sealed record Term(string Name, IReadOnlyList<string> Values, bool Ordered, int Line)
{
    public string? Question { get; set; }
    public Band? Band { get; set; }
    public List<Telling> ToldBy { get; } = [];
    /// <summary>What is taken for granted of a written play that says nothing of this fact; the answer says so. Never in a safety sheet.</summary>
    public string? Usually { get; set; }
    /// <summary>The side that chooses this fact's value, when it is a choice: offence or defence.</summary>
    public string? ChoiceOf { get; set; }
}

/// <summary>When these conditions hold, this is done to the game. The words are those of <see cref="EffectWords"/>.</summary>
public sealed record EffectLine(IReadOnlyList<string> When, IReadOnlyList<string> Effects, int Line);

/// <summary>What a ruling can do to a game, in the words a sheet uses. "Runner" is the one the play is about; "others" are the rest.</summary>
public static class EffectWords
{
    public static IReadOnlyList<string> All { get; } =
    [
        "play stands", "no play", "runs do not count",
        "add a ball", "add a strike", "add a foul", "batter out", "due batter out", "batter to first", "batter to second", "batter to third", "batter scores",
        "runner out", "runner behind out", "runner nearest home out", "runner back", "runner up one", "runner up two", "runner scores", "runner stays",
        "others back", "others up one", "others up two", "others forced",
    ];
}

/// <summary>Moments of which only one can happen: "defence appeals | nobody appeals".</summary>
public sealed record MomentLine(IReadOnlyList<string> Alternatives, int Line);

/// <summary>A fact's value is told when these moments happen in this order, whatever else happens between them.</summary>
public sealed record Telling(string Value, IReadOnlyList<string> InOrder, int Line);

/// <summary>A fact that is a band over a number; <see cref="Edges"/> part the bands, each with its neighbour.</summary>
public sealed record Band(string Unit, double Low, double High)
{
    public List<Edge> Edges { get; } = [];
}

/// <summary>
/// An edge between two bands: a number or a [parameter], moved by <paramref name="Offset"/> in the band's unit. The edge itself belongs to the
/// band above it, unless <paramref name="Above"/> leaves it in the band below.
/// </summary>
public sealed record Edge(string Text, double Offset, bool Above)
{
    public string? Parameter => Text is ['[', .., ']'] ? Text[1..^1].Trim() : null;
}

/// <summary>Another sheet's decision, used as a fact.</summary>
public sealed record Use(string Decision, string Sheet, int Line);

/// <summary>What the values of a sheet have to obey: [left] op [right] x factor, within a tolerance.</summary>
public sealed record Must(string Id, string Title, string Text, int Line);

/// <summary>A rule, an exception inside one, or an impossible combination.</summary>
public sealed class Clause
{
    public required string Id { get; init; }
    public required string Title { get; init; }
    public required int Line { get; init; }
    /// <summary>The file it was written in: the sheet's, or that of the layer which adds an exception.</summary>
    public required string File { get; init; }
    public string? Layer { get; init; }
    public string? Reason { get; set; }
    /// <summary>What the umpire does now, in the imperative.</summary>
    public string? Do { get; set; }
    public List<Phrase> When { get; } = [];
    public List<Phrase> Then { get; } = [];
    public List<ScopedCite> Cites { get; } = [];
    public List<string> PrevailsOver { get; } = [];
    public List<Clause> Exceptions { get; } = [];
    /// <summary>The highest kind of layer that may add an exception to this rule.</summary>
    public LayerKind OpenTo { get; set; } = LayerKind.Book;
}

public sealed record Phrase(string Text, int Line);

public sealed record ScopedCite(Scope? Scope, Citation Citation);
