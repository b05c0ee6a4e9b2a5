using Umpirage.Finder;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Web;

/// <summary>A fact read from somebody's words, and the words that say it.</summary>
public sealed record FactRead(string Fact, string Value, string From)
{
    public string Said => $"{Fact} is {Value}";
}

/// <summary>A subject that the words may be about, with what they say of its facts.</summary>
public sealed record SubjectFound(string Sheet, IReadOnlyList<FactRead> Facts);

/// <summary>From plain words to a subject. The finder is loaded when somebody first asks, and kept.</summary>
public sealed class FindingWords(Settings settings, Shelf shelf)
{
    private readonly Lazy<SubjectFinder> finder = new(() => SubjectFinder.Open(shelf.Book, Material(settings), settings.FinderCache, Console.Error.WriteLine));

    /// <summary>The subjects the words fit, best first; none when none fits.</summary>
    public IReadOnlyList<SubjectFound> Subjects(string words, string code, int most = 3)
    {
        var finds = finder.Value.Find(words, most, GameOf(code));
        return finds.Fits ? [.. finds.Subjects.Select(s => new SubjectFound(s.Sheet, [.. s.Facts.Select(f => new FactRead(f.Fact, f.Value, f.Words))]))] : [];
    }

    public IReadOnlyList<FactRead> Facts(string words, string sheet) => [.. finder.Value.Read(words, sheet).Select(f => new FactRead(f.Fact, f.Value, f.Words))];

    /// <summary>Works out what the finder learns from the texts, for the launcher.</summary>
    public void Learn() => _ = finder.Value;

    private static string? GameOf(string code) => CodeAddress.Read(code)?.Game;

    private static Material Material(Settings settings) => new(
        Texts(Path.Combine(settings.Codes, "sheets"), "*.sheet"), Texts(Path.Combine(settings.Codes, "asked"), "*.asked"), Texts(settings.Casebook, "*.play"),
        new("synonyms.txt", File.ReadAllText(Path.Combine(settings.Codes, "synonyms.txt"))));

    private static IReadOnlyList<SourceText> Texts(string folder, string pattern) =>
        [.. Directory.EnumerateFiles(folder, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f)))];
}
