namespace Umpirage.District.Clinic;

/// <summary>A short name for a text, the same on every machine: FNV-1a, 64 bits (Fowler, Noll and Vo), in letters and digits.</summary>
internal static class Stamp
{
    private const string Letters = "0123456789abcdefghjkmnpqrstvwxyz";

    public static ulong Number(string text)
    {
        var hash = 14695981039346656037UL;
        foreach (var c in text) hash = (hash ^ c) * 1099511628211UL;
        return hash ^ hash >> 29;
    }

    public static string Of(string text)
    {
        var hash = Number(text);
        return string.Create(10, hash, (span, h) => { for (var i = 0; i < span.Length; i++) { span[i] = Letters[(int)(h & 31)]; h >>= 5; } });
    }
}
