using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>A named text: a file somebody else has opened.</summary>
public sealed record SourceText(string File, string Text)
{
    public static implicit operator SourceText((string File, string Text) pair) => new(pair.File, pair.Text);
}

/// <summary>A line of a file that says something: comments and blank lines are passed over, white space is folded.</summary>
public readonly record struct SourceLine(int Number, string Text)
{
    public string Short => Text.Length <= 60 ? Text : Text[..57] + "...";

    /// <summary>The lines that say something. In a game a player's number begins with #, so there only "# " begins a comment.</summary>
    public static IEnumerable<SourceLine> Of(string text, string comment = "#")
    {
        using var reader = new StringReader(text);
        for (var number = 1; reader.ReadLine() is { } raw; number++)
        {
            var tidy = Words.Tidy(raw);
            if (tidy.Length > 0 && !tidy.StartsWith(comment, StringComparison.Ordinal)) yield return new(number, tidy);
        }
    }
}
