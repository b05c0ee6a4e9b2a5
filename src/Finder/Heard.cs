namespace Umpirage.Finder;

/// <summary>A run of words of a question: as it was typed, what it is read as, where it stands, and the sentence part it belongs to.</summary>
public readonly record struct Heard(string Said, string Meant, int Start, int End, int Part);

/// <summary>A question taken apart into words. <see cref="Terms"/> are the stems and synonym groups that full text compares, each with the word it comes from.</summary>
public sealed record Utterance(string Text, IReadOnlyList<Heard> Words, IReadOnlyList<(string Term, int Word)> Terms)
{
    public static Utterance Empty { get; } = new("", [], []);

    /// <summary>Facts that are said in so many words, under whichever subject has them.</summary>
    public IReadOnlyList<SureWords> Sure { get; init; } = [];

    /// <summary>The typed words from one word to another, both included.</summary>
    public string Between(int first, int last) => Text[Words[first].Start..Words[last].End];
}

/// <summary>A fact's value, and the words that say it without doubt.</summary>
public readonly record struct SureWords(string Fact, string Value, int First, int Last);
