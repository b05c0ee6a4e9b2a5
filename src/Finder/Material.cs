using System.Security.Cryptography;
using System.Text;
using Umpirage.Rules.Codes;

namespace Umpirage.Finder;

/// <summary>The texts a finder learns from: sheets, asked questions, plays and synonyms.</summary>
public sealed record Material(IReadOnlyList<SourceText> Sheets, IReadOnlyList<SourceText> Asked, IReadOnlyList<SourceText> Plays, SourceText Synonyms)
{
    /// <summary>The file of what was learned from the texts, where there may be one.</summary>
    public string? Weights { get; init; }

    /// <summary>Reads them from a folder of codes and a casebook; what a folder does not have is left out.</summary>
    public static Material Read(string codes, string casebook)
    {
        var synonyms = Path.Combine(codes, "synonyms.txt");
        return new(Texts(Path.Combine(codes, "sheets"), "*.sheet"), Texts(Path.Combine(codes, "asked"), "*.asked"), Texts(casebook, "*.play"), new("synonyms.txt", File.Exists(synonyms) ? File.ReadAllText(synonyms) : "")) { Weights = Path.Combine(codes, LearnedFile.Name) };
    }

    /// <summary>The texts by which it is told whether what was learned is still of today. Plays come and go daily and teach little; they do not count.</summary>
    public Material ForLearning() => this with { Plays = [] };

    /// <summary>Where what was seen of later subjects is kept, for the terminal and the desk alike.</summary>
    public static string IndexBeside(string codes) => Path.GetFullPath(Path.Combine(codes, "..", ".build", "finder.index"));

    private static IReadOnlyList<SourceText> Texts(string folder, string pattern) => !Directory.Exists(folder) ? []
        : [.. Directory.EnumerateFiles(folder, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f)))];

    /// <summary>Changes with every letter of every text.</summary>
    public string Key()
    {
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var text in Sheets.Concat(Asked).Concat(Plays).Append(Synonyms)) sum.AppendData(Encoding.UTF8.GetBytes($"{text.Text.Length}\n{text.Text}\n"));
        return Convert.ToHexString(sum.GetHashAndReset());
    }
}
