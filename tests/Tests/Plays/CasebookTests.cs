namespace Umpirage.Tests.Plays;

/// <summary>The casebook, ruled. A case that could not be stated counts as a miss.</summary>
public class CasebookTests
{
    private static readonly Lazy<(IReadOnlyList<Outcome> Outcomes, IReadOnlyList<Finding> Findings)> Book = new(() =>
    {
        var findings = new List<Finding>();
        var plays = Shelf.Files(Folder.Of("casebook"), "*.play").Select(f => PlayReader.Read(Path.GetRelativePath(Folder.Root, f), File.ReadAllText(f), findings)).ToList();
        return ([.. plays.Select(p => Umpirage.Rules.Calls.Held.Of(Shelf.Codes, p, Shelf.Today))], findings);
    });

    private static int NotStated => Shelf.Files(Folder.Of("casebook", "not-stated"), "*.txt").SelectMany(File.ReadLines).Count(l => l.Trim() != "" && l[0] != '#');

    private static string Misses(IEnumerable<Outcome> outcomes) => string.Join("\n", outcomes.Where(o => !o.AsPublished).SelectMany(o => o.Misses));

    [Fact]
    public void Every_play_can_be_read() => Assert.Empty(Book.Value.Findings);

    [Fact]
    public void At_least_97_percent_of_published_undisputed_plays_are_ruled_as_published()
    {
        var plays = Book.Value.Outcomes.Where(o => o.Play is { Standing: "source", Collection: "" }).ToList();
        Assert.NotEmpty(plays);
        Assert.True(plays.Count(o => o.AsPublished) >= 0.97 * plays.Count, Misses(plays));
    }

    [Fact]
    public void At_least_90_percent_of_all_cases_are_ruled_as_published()
    {
        var plays = Book.Value.Outcomes.Where(o => o.Play is { Standing: not "own", Collection: "" }).ToList();
        Assert.True(plays.Count(o => o.AsPublished) >= 0.90 * (plays.Count + NotStated), Misses(plays));
    }

    [Fact]
    public void Of_the_published_plays_gathered_later_at_least_97_percent_are_ruled_as_published()
    {
        var plays = Book.Value.Outcomes.Where(o => o.Play.Collection == "gathered").ToList();
        Assert.True(plays.Count > 200);
        Assert.True(plays.Count(o => o.AsPublished) >= 0.97 * plays.Count, Misses(plays));
    }

    [Fact]
    public void Our_own_plays_from_published_facts_are_all_ruled()
    {
        var plays = Book.Value.Outcomes.Where(o => o.Play.Standing == "own").ToList();
        Assert.True(plays.All(o => o.AsPublished), Misses(plays));
    }

    [Fact]
    public void Every_published_play_records_its_deciding_rule()
    {
        var silent = Book.Value.Outcomes.Where(o => o.Play.Expect.Any(e => e.By is null)).Select(o => o.Play.File);
        Assert.Empty(silent);
    }

    [Fact]
    public void Every_sheet_has_a_play()
    {
        var played = Book.Value.Outcomes.Select(o => o.Play.Sheet).ToHashSet(StringComparer.OrdinalIgnoreCase);
        Assert.True(Shelf.Codes.Sheets.All(s => played.Contains(s.Name)), string.Join(", ", Shelf.Codes.Sheets.Select(s => s.Name).Where(s => !played.Contains(s))));
    }

    [Fact]
    public void The_open_cases_are_all_here()
    {
        var open = Folder.Shared("cases", "open.jsonl");
        Assert.SkipWhen(open is null, "the open cases lie beside the project in shared/cases and are not here");
        var ids = File.ReadLines(open!).Select(l => System.Text.Json.JsonDocument.Parse(l).RootElement.GetProperty("id").GetString()!);
        var here = Book.Value.Outcomes.Select(o => o.Play.Id).Concat(Shelf.Files(Folder.Of("casebook", "not-stated"), "*.txt").SelectMany(File.ReadLines).Select(l => l.Split('|')[0].Trim())).ToList();
        var lost = ids.Where(id => !here.Any(h => h == id || h.StartsWith(id + "(", StringComparison.Ordinal) || (h.StartsWith(id, StringComparison.Ordinal) && h.Length == id.Length + 1))).ToList();
        Assert.True(lost.Count == 0, string.Join(", ", lost));
    }
}
