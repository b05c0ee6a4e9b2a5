using Umpirage.Rules.Ground;

namespace Umpirage.Web;

/// <summary>A fact read from somebody's words, and the words that say it.</summary>
public sealed record FactRead(string Fact, string Value, string From)
{
    public string Said => $"{Fact} is {Value}";
}

/// <summary>A subject that the words may be about, with what they say of its facts.</summary>
public sealed record SubjectFound(string Sheet, IReadOnlyList<FactRead> Facts);

/// <summary>From plain words to a subject. Until the finder is in, by the words of the sheets' names.</summary>
public sealed class FindingWords(Shelf shelf)
{
    public IReadOnlyList<SubjectFound> Subjects(string words, string code)
    {
        var said = words.ToLowerInvariant().Split([' ', ',', '.', '?'], StringSplitOptions.RemoveEmptyEntries).ToHashSet();
        return [.. shelf.Book.Sheets.Select(s => (s.Name, Score: s.Name.Split(' ').Count(said.Contains) * 3 + s.About.ToLowerInvariant().Split(' ').Count(said.Contains))).Where(s => s.Score > 0).OrderByDescending(s => s.Score).Take(3).Select(s => new SubjectFound(s.Name, []))];
    }

    public IReadOnlyList<FactRead> Facts(string words, string sheet, string code) => [];
}
