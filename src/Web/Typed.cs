namespace Umpirage.Web;

/// <summary>What somebody typed.</summary>
internal static class Typed
{
    /// <summary>No longer than it may be, without blanks at its ends; nothing for nothing.</summary>
    public static string Cut(string? text, int most) => text is null ? "" : text.Length <= most ? text.Trim() : text[..most].Trim();

    /// <summary>A day written 2026-05-16; null for anything else.</summary>
    public static DateOnly? Day(string? text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out var day) ? day : null;
}
