using Umpirage.District.Cards;
using Umpirage.District.Diamonds;
using Umpirage.Finder;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli;

/// <summary>Reads the folders of codes and plays.</summary>
internal static class Library
{
    /// <summary>All sheets and layers, or only the named sheets with what they use, and layers only when the address names one.</summary>
    public static Codebook Codes(Request request, IReadOnlyCollection<string>? only = null, string? address = null)
    {
        var folder = request.Codes;
        var roster = Path.Combine(folder, "roster.txt");
        var layers = Files(Path.Combine(folder, "layers"), "*.layer");
        if (only is not null)
        {
            var book = Codebook.Read(Text(roster), []);
            if (address is null || !OnBooksAlone(book.Roster, address)) foreach (var file in layers) book.Add(Name(file), File.ReadAllText(file));
            if (only.All(sheet => Load(book, folder, sheet))) return book;
        }
        return Codebook.Read(Text(roster), Files(Path.Combine(folder, "sheets"), "*.sheet").Concat(layers).Select(Text));
    }

    private static bool OnBooksAlone(Roster roster, string address) =>
        CodeAddress.Read(address) is { } read && !roster.PlayedAs.ContainsKey(address) && read.Layers.All(l => roster.Body(read.Game, l.Name) is not null);

    private static bool Load(Codebook book, string folder, string sheet)
    {
        if (book.Sheet(sheet) is not null) return true;
        var file = Path.Combine(folder, "sheets", Words.Slug(sheet) + ".sheet");
        if (!File.Exists(file)) return false;
        book.Add(Name(file), File.ReadAllText(file));
        return book.Sheet(sheet) is { } read && read.Uses.All(u => Load(book, folder, u.Sheet));
    }

    public static IReadOnlyList<Play> Plays(string folder, List<Finding> findings) =>
        [.. Files(folder, "*.play").Select(f => PlayReader.Read(Name(f), File.ReadAllText(f), findings))];

    /// <summary>The finder for these codes and plays; its index is made on first use and kept in the project's build folder, or with the codes it was made from.</summary>
    public static SubjectFinder Finder(Request request, Codebook book) =>
        SubjectFinder.Open(book, Material.Read(request.Codes, request.Casebook), Material.IndexBeside(request.Codes), Console.Error.WriteLine);

    public static IEnumerable<SourceText> Asked(Request request) => Files(Path.Combine(request.Codes, "asked"), "*.asked").Select(Text);

    /// <summary>The sentences in which facts are told and decisions asked for.</summary>
    public static IEnumerable<SourceText> Phrases(Request request) => Files(Path.Combine(request.Codes, "phrases"), "*.phrases").Select(Text);

    /// <summary>How subjects are pictured; a picture that cannot be read is left out here, a test holds them all.</summary>
    public static IReadOnlyDictionary<string, Picture> Pictures(Request request, Codebook book) =>
        Files(Path.Combine(request.Codes, "pictures"), "*.picture").Select(f => Picture.Read(Name(f), File.ReadAllText(f), book, [])).OfType<Picture>().ToDictionary(p => p.Sheet);

    /// <summary>The plans of cards, in the order of their names.</summary>
    public static IReadOnlyList<CardPlan> Cards(Request request, Codebook book, List<Finding> findings) =>
        [.. Files(Path.Combine(request.Codes, "cards"), "*.card").Select(f => CardPlanReader.Read(Name(f), File.ReadAllText(f), book, findings)).OfType<CardPlan>()];

    /// <summary>How often each subject was asked about, counted by the plays of the casebook.</summary>
    public static IReadOnlyDictionary<string, int> Asked(Request request, Codebook book) =>
        book.Sheets.ToDictionary(s => s.Name, s => Files(Path.Combine(request.Casebook, Words.Slug(s.Name)), "*.play").Count);

    /// <summary>The list of synonyms; an empty one where codes have none.</summary>
    public static SourceText Synonyms(Request request)
    {
        var file = Path.Combine(request.Codes, "synonyms.txt");
        return File.Exists(file) ? Text(file) : new(Name(file), "");
    }

    /// <summary>Cases that could not be stated, as "ID | reason".</summary>
    public static IReadOnlyList<string> NotStated(string casebook) =>
        [.. Files(Path.Combine(casebook, "not-stated"), "*.txt").SelectMany(File.ReadAllLines).Where(l => l.Trim() != "" && l[0] != '#')];

    private static IReadOnlyList<string> Files(string folder, string pattern) =>
        Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal)] : [];

    private static SourceText Text(string file) => new(Name(file), File.ReadAllText(file));

    private static string Name(string file) => Path.GetRelativePath(Environment.CurrentDirectory, file) is var near && near.StartsWith("..", StringComparison.Ordinal) ? file : near;
}
