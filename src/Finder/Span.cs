namespace Umpirage.Finder;

/// <summary>
/// Words that say a fact's value: a run of words of a question that was asked, or (with no example) the value's own name or moment.
/// <paramref name="Usual"/> and <paramref name="Spread"/> tell how like it questions are that do not say so.
/// </summary>
internal sealed record Span(int Subject, int Fact, int Value, int Example, float[] Direction, int Words, Sparse Terms, bool Denies)
{
    public float Usual { get; set; }
    public float Spread { get; set; } = 1;
}
