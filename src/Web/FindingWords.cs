using Umpirage.Finder;
using Umpirage.Rules.Ground;

namespace Umpirage.Web;

/// <summary>A fact read from somebody's words, and the words that say it.</summary>
public sealed record FactRead(string Fact, string Value, string From)
{
    public string Said => $"{Fact} is {Value}";
}

/// <summary>A subject that the words may be about, with what they say of its facts.</summary>
public sealed record SubjectFound(string Sheet, IReadOnlyList<FactRead> Facts);

/// <summary>
/// From plain words to a subject. The finder is loaded when somebody first asks, and kept. Subjects that came after what was learned are looked at
/// first, once: until then the desk does without it.
/// </summary>
public sealed class FindingWords(Settings settings, Shelf shelf)
{
    /// <summary>How long a page waits for the finder to be loaded.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(8);

    private readonly Lazy<Task<SubjectFinder>> finder = new(() => Task.Factory.StartNew(
        () => SubjectFinder.Open(shelf.Book, Material.Read(settings.Codes, settings.Casebook), settings.FinderCache, Console.Error.WriteLine), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default));

    /// <summary>Begins to look at later subjects when that was never done, so that it is done when somebody asks.</summary>
    public void Begin()
    {
        if (!File.Exists(settings.FinderCache)) _ = finder.Value;
    }

    /// <summary>False while it still learns.</summary>
    public bool Ready => finder.Value.Wait(Patience);

    /// <summary>The subjects the words fit, best first; none when none fits.</summary>
    public IReadOnlyList<SubjectFound> Subjects(string words, string code, int most = 3)
    {
        var finds = finder.Value.Result.Find(words, most, GameOf(code));
        return finds.Fits ? [.. finds.Subjects.Select(s => new SubjectFound(s.Sheet, [.. s.Facts.Select(f => new FactRead(f.Fact, f.Value, f.Words))]))] : [];
    }

    public IReadOnlyList<FactRead> Facts(string words, string sheet) => [.. finder.Value.Result.Read(words, sheet).Select(f => new FactRead(f.Fact, f.Value, f.Words))];

    private static string? GameOf(string code) => CodeAddress.Read(code)?.Game;
}
