namespace Umpirage.Web;

/// <summary>What somebody typed.</summary>
internal static class Typed
{
    /// <summary>No longer than it may be, without blanks at its ends; nothing for nothing.</summary>
    public static string Cut(string? text, int most) => text is null ? "" : text.Length <= most ? text.Trim() : text[..most].Trim();
}
