using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>Pieces of pages: text made harmless, names of codes, and minutes.</summary>
internal static class Markup
{
    public static string Safe(string text) => text.Replace("&", "&amp;").Replace("<", "&lt;").Replace(">", "&gt;").Replace("\"", "&quot;");

    /// <summary>"Softball 12U", with the book and the day where the two codes would otherwise have one name.</summary>
    public static (string Here, string There) Names(Code here, Code there)
    {
        if (here.Address.ToString() == there.Address.ToString()) return (Plain(here), Plain(there));
        foreach (var name in (Func<Code, string>[])[Plain, c => c.Body is { } body ? $"{Plain(c)}, {body.Name}" : $"{Plain(c)}, at large", c => $"{Plain(c)}{(c.Body is { } b ? $", {b.Name}" : "")}, {c.Date.Year}"])
            if (name(here) != name(there)) return (name(here), name(there));
        return (here.Address.ToString(), there.Address.ToString());
    }

    private static string Plain(Code code) => $"{Words.Upper(code.Game)} {code.Division}{string.Concat(code.Stack.Select(l => $" {l.Name}"))}";

    public static string OnTheClock(int seconds) => $"{seconds / 60}:{seconds % 60:00}";
}
