using System.Security.Cryptography;
using System.Text;
using Umpirage.Rules.Codes;

namespace Umpirage.Finder;

/// <summary>The texts a finder learns from: sheets, asked questions, plays and synonyms. It is handed texts; somebody else opens the files.</summary>
public sealed record Material(IReadOnlyList<SourceText> Sheets, IReadOnlyList<SourceText> Asked, IReadOnlyList<SourceText> Plays, SourceText Synonyms)
{
    /// <summary>Changes with every letter of every text.</summary>
    public string Key()
    {
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var text in Sheets.Concat(Asked).Concat(Plays).Append(Synonyms)) sum.AppendData(Encoding.UTF8.GetBytes($"{text.Text.Length}\n{text.Text}\n"));
        return Convert.ToHexString(sum.GetHashAndReset());
    }
}
