namespace Umpirage.Tests;

/// <summary>Where the project's data lies, and how much of a counted test to run.</summary>
internal static class Folder
{
    public static string Root { get; } = Find();

    public static string Of(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>Research data beside the project; null when a clone stands alone.</summary>
    public static string? Shared(params string[] parts)
    {
        var path = Path.Combine([Root, "..", "shared", .. parts]);
        return File.Exists(path) || Directory.Exists(path) ? path : null;
    }

    /// <summary>A reduced count for every day, or the full one when UMPIRAGE_LONG is set (bench/long.sh).</summary>
    public static int Count(int everyDay, int full) => Environment.GetEnvironmentVariable("UMPIRAGE_LONG") is { Length: > 0 } ? full : everyDay;

    private static string Find()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "Umpirage.slnx"))) return at.FullName;
        throw new InvalidOperationException("the tests must run inside the project's folder");
    }
}

/// <summary>The project's own codes and casebook, read once.</summary>
internal static class Shelf
{
    public static DateOnly Today { get; } = new(2026, 5, 16);

    public static Codebook Codes { get; } = Read(Folder.Of("codes"));

    public static Codebook Read(string folder) => Codebook.Read(
        ("roster.txt", File.ReadAllText(Path.Combine(folder, "roster.txt"))),
        Files(folder, "*.sheet").Concat(Files(folder, "*.layer")).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))));

    public static Roster Roster => Codes.Roster;

    public static IReadOnlyList<string> Files(string folder, string pattern) =>
        [.. Directory.EnumerateFiles(folder, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    public static Codebook Of(string text, string file = "test.sheet") => Codebook.Read(("roster.txt", RosterText), [(file, text)]);

    public static string RosterText { get; } = File.ReadAllText(Folder.Of("codes", "roster.txt"));

    public static Code Code(Codebook book, string address)
    {
        var faults = new List<string>();
        return Rules.Codes.Code.Of(book, CodeAddress.Read(address)!, Today, faults) ?? throw new InvalidOperationException(string.Join("; ", faults));
    }

    public static Table Table(string address, string sheet, Codebook? book = null)
    {
        var findings = new List<Finding>();
        return Casebook.Table(book ?? Codes, address, sheet, Today, "test", findings) ?? throw new InvalidOperationException(string.Join("; ", findings));
    }
}
