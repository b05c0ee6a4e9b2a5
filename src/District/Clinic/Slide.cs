using Umpirage.Rules.Codes;

namespace Umpirage.District.Clinic;

/// <summary>What a slide shows.</summary>
public enum SlideKind { Opening, Beliefs, Pair, Table, Numbers, Only, Closing }

/// <summary>A number that the two codes set differently, and the subject it belongs to.</summary>
public sealed record NumberRow(string Sheet, string Name, string Here, string There, string HereSource, string ThereSource, string? Caution);

/// <summary>A subject that only one game knows.</summary>
public sealed record OnlyRow(string Sheet, string About, string Game);

/// <summary>A line of the crossover that no play shows under both codes, because it hangs on an earlier decision that only one of them ever makes.</summary>
public sealed record Follow(string Sheet, string Group, RulingDifference Line);

/// <summary>One slide: what is on it, how long it takes, and the instructor's own note, if there is one.</summary>
public sealed record Slide(string Key, SlideKind Kind, string Kicker, string Title, int Seconds)
{
    public IReadOnlyList<Contrast> Contrasts { get; init; } = [];
    public IReadOnlyList<NumberRow> Numbers { get; init; } = [];
    public IReadOnlyList<OnlyRow> Only { get; init; } = [];
    public IReadOnlyList<Refuted> Beliefs { get; init; } = [];
    public string? Note { get; init; }
}

/// <summary>What the code changed since an instructor wrote: the difference, and what became of it.</summary>
public sealed record Stale(string Key, string Words);

/// <summary>What an instructor said about one contrast or slide.</summary>
public sealed record Wish(string Key, string Name, string? Show, int? Seconds, string? Note, string? Print);

/// <summary>
/// A lesson on what is different: its slides in order, and what the instructor's earlier edits say that no longer fits. <paramref name="All"/> holds every
/// difference that belongs to the audience, on a slide or not. <paramref name="Subjects"/>: those it was cut to; none when it holds everything that differs.
/// </summary>
public sealed record Lesson(
    Code Here, Code There, string Audience, string Title, IReadOnlyList<string> Subjects, IReadOnlyList<Slide> Slides, IReadOnlyList<Contrast> All, IReadOnlyList<NumberRow> Numbers, IReadOnlyList<OnlyRow> Only,
    IReadOnlyList<Follow> Follows, IReadOnlyList<Refuted> Beliefs, IReadOnlyList<Wish> Wishes, IReadOnlyList<Stale> Stale, IReadOnlyList<Contrast> Quiz)
{
    /// <summary>The plays that the two codes rule otherwise.</summary>
    public int Differing => All.Count(c => !c.Alone);

    public int Seconds => Slides.Sum(s => s.Seconds);

    /// <summary>The number of the slide on which a difference stands; null when it is gone or not shown.</summary>
    public int? SlideOf(string key)
    {
        for (var i = 0; i < Slides.Count; i++) if (Slides[i].Key == key || Slides[i].Contrasts.Any(c => c.Key == key)) return i + 1;
        return null;
    }
}
