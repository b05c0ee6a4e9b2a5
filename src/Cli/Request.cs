using Umpirage.Rules.Codes;

namespace Umpirage.Cli;

/// <summary>What was typed after the verb: words, and the few options every verb knows.</summary>
internal sealed record Request(IReadOnlyList<string> Words, bool Json, string Codes, string Casebook, DateOnly Today, string Root, string? Data, string? Postgres)
{
    public static Request Read(string[] args)
    {
        var root = Folder();
        var words = new List<string>();
        var (json, codes, casebook) = (false, Path.Combine(root, "codes"), Path.Combine(root, "casebook"));
        string? data = null, postgres = null;
        for (var i = 0; i < args.Length; i++)
        {
            if (args[i] == "--json") json = true;
            else if (args[i] == "--codes" && i + 1 < args.Length) codes = args[++i];
            else if (args[i] == "--casebook" && i + 1 < args.Length) casebook = args[++i];
            else if (args[i] == "--data" && i + 1 < args.Length) data = args[++i];
            else if (args[i] == "--postgres" && i + 1 < args.Length) postgres = args[++i];
            else words.Add(args[i]);
        }
        return new(words, json, codes, casebook, DateOnly.FromDateTime(DateTime.Now), root, data, postgres);
    }

    /// <summary>The code that was asked for, or the game for which the sheet is written in the second division of the roster.</summary>
    public string Address(Codebook book, Sheet? sheet) =>
        Words.Count > 1 ? Words[1] : book.Roster.UsualCode(sheet?.OnlyFor);

    /// <summary>The project's folder: the launcher names it, otherwise the nearest folder above that holds codes/.</summary>
    private static string Folder()
    {
        if (Environment.GetEnvironmentVariable("UMPIRAGE_ROOT") is { Length: > 0 } root) return root;
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (Directory.Exists(Path.Combine(at.FullName, "codes", "sheets"))) return at.FullName;
        return Environment.CurrentDirectory;
    }
}
