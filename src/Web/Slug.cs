namespace Umpirage.Web;

/// <summary>A subject's name as part of an address.</summary>
public static class Slug
{
    public static string Of(string name) => string.Join('-', new string([.. name.ToLowerInvariant().Where(c => c is not ('\'' or ',' or ':'))]).Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
