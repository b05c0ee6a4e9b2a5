namespace Umpirage.Rules.Ground;

/// <summary>How far a statement can be trusted. Anything but <see cref="Published"/> is said aloud in a ruling.</summary>
public enum Standing { Published, CommonPractice, FromMemory, OurOwn }

/// <summary>Where a rule or a value comes from: document, edition and rule number in our own words, and its standing.</summary>
public sealed record Citation(string Source, Standing Standing)
{
    /// <summary>The words for each standing, in the order of <see cref="Ground.Standing"/>.</summary>
    private static readonly string[] Known = ["published", "common practice, no source", "from memory", "our own"];

    public static string Allowed { get; } = string.Join("; ", Known);

    /// <summary>Reads "source | status". Returns false when the status is missing or unknown, or the source is blank.</summary>
    public static bool TryRead(string text, out Citation citation)
    {
        citation = new("", Standing.FromMemory);
        var bar = text.LastIndexOf('|');
        if (bar < 0) return false;
        var source = text[..bar].Trim();
        var words = text[(bar + 1)..].Trim();
        var known = Array.FindIndex(Known, k => Ground.Words.Same(k, words));
        if (known < 0 || source.Length == 0) return false;
        citation = new(source, (Standing)known);
        return true;
    }

    public bool Verified => Standing is Standing.Published or Standing.OurOwn;

    public override string ToString() => Standing switch
    {
        Standing.Published => Source,
        Standing.OurOwn => Source,
        Standing.CommonPractice => $"{Source} (common practice, no source)",
        _ => $"{Source} (from memory, not checked)",
    };
}
