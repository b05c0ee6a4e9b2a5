namespace Umpirage.District.Clinic;

/// <summary>A short name for a text, the same on every machine: FNV-1a, 64 bits (Fowler, Noll and Vo), in letters and digits.</summary>
internal static class Stamp
{
    private const string Letters = "0123456789abcdefghjkmnpqrstvwxyz";

    public static ulong Number(string text)
    {
        var hash = 14695981039346656037UL;
        foreach (var c in text) hash = (hash ^ c) * 1099511628211UL;
        // the last letters alone would hardly move the number: stirred as in MurmurHash3 (Appleby, public domain)
        hash = (hash ^ hash >> 33) * 0xFF51AFD7ED558CCD;
        hash = (hash ^ hash >> 33) * 0xC4CEB9FE1A85EC53;
        return hash ^ hash >> 33;
    }

    public static string Of(string text)
    {
        var hash = Number(text);
        return string.Create(10, hash, (span, h) => { for (var i = 0; i < span.Length; i++) { span[i] = Letters[(int)(h & 31)]; h >>= 5; } });
    }
}
