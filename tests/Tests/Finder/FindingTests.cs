using System.Text.RegularExpressions;
using Umpirage.Finder;

namespace Umpirage.Tests.Finder;

/// <summary>
/// The 145 open cases, each told four ways: the play's own sentence, and three by writers who had seen neither sheets nor synonyms. No play of an
/// open case is among what the finder learned from (tools/Tune leaves them out). Bars: the right subject first 85 %, in the first three 97 %; of the facts stated 60 % filled,
/// and of those filled 95 % right.
/// </summary>
public partial class FindingTests(ITestOutputHelper output)
{
    private static readonly string[] Ways = ["the play's own sentence", "on a phone", "in the trade's shorthand", "by a newcomer"];

    [GeneratedRegex(@"^(SB|BB)-\d+")]
    private static partial Regex Open();

    private sealed record Asked(string Id, int Way, string Words, IReadOnlyList<string> Stated);

    private static SubjectFinder Finder { get; } = Learn();

    private static SubjectFinder Learn()
    {
        var material = Material.Read(Folder.Of("codes"), Folder.Of("casebook"));
        material = material with { Plays = [.. material.Plays.Where(p => !Open().IsMatch(p.File))] };
        return SubjectFinder.Open(Shelf.Codes, material, Folder.Of(".build", "finder-measured.index"));
    }

    [Fact]
    public void The_right_subject_is_found_and_the_facts_said_are_read()
    {
        var plays = Shelf.Files(Folder.Of("casebook"), "*.play").Where(f => Open().IsMatch(Path.GetFileName(f))).Select(f => PlayReader.Read(f, File.ReadAllText(f), [])).ToList();
        var asked = Read(plays);
        Assert.Equal(145 * 4, asked.Count);
        var (first, three, stated, filled, right, agreed) = (new int[4], new int[4], new int[4], new int[4], new int[4], new int[4]);
        var missed = new List<string>();
        foreach (var one in asked)
        {
            var play = plays.Single(p => p.Id == one.Id);
            var number = Open().Match(one.Id).Value;
            // parts of one case may lie on different sheets; any of them is right
            var sheets = plays.Where(p => Open().Match(p.Id).Value == number).Select(p => p.Sheet).ToHashSet(StringComparer.OrdinalIgnoreCase);
            var found = Finder.Find(one.Words).Subjects.Select(s => s.Sheet).ToList();
            if (found.Count > 0 && sheets.Contains(found[0])) first[one.Way]++;
            if (found.Any(sheets.Contains)) three[one.Way]++; else missed.Add($"{one.Id}/{one.Way}");
            var true_ = Facts(play);
            var read = Finder.Read(one.Words, play.Sheet).Select(f => $"{f.Fact} is {f.Value}").ToList();
            stated[one.Way] += one.Stated.Count;
            filled[one.Way] += one.Stated.Count(s => read.Contains(s, StringComparer.OrdinalIgnoreCase));
            right[one.Way] += read.Count;
            agreed[one.Way] += read.Count(r => one.Stated.Contains(r, StringComparer.OrdinalIgnoreCase) || true_.Contains(r));
        }
        for (var w = 0; w < 4; w++)
            output.WriteLine($"finding, {Ways[w]}: first {first[w]} of 145, in the first three {three[w]}; facts filled {filled[w]} of {stated[w]} stated, {agreed[w]} of {right[w]} filled right");
        double Share(int[] part, int[] of) => (double)part.Sum() / of.Sum();
        var (f, t) = (first.Sum() / 580.0, three.Sum() / 580.0);
        output.WriteLine($"finding, all: first {f:P1} (bar 85 %), in the first three {t:P1} (bar 97 %); facts filled {Share(filled, stated):P1} (bar 60 %), of those filled right {Share(agreed, right):P1} (bar 95 %)");
        output.WriteLine($"not in the first three: {string.Join(" ", missed)}");
        output.WriteLine(Finder.Figures);
        // the bars are not reached yet; what is reached is held, rounded down, and is to rise
        Assert.True(f >= 0.78, $"first {f:P1}; the bar is 85 %");
        Assert.True(t >= 0.94, $"three {t:P1}; the bar is 97 %");
        Assert.True(Share(filled, stated) >= 0.33, $"filled {Share(filled, stated):P1}; the bar is 60 %");
        Assert.True(Share(agreed, right) >= 0.92, $"right {Share(agreed, right):P1}; the bar is 95 %");
    }

    [Fact]
    public void Nothing_is_claimed_for_talk_of_other_things()
    {
        foreach (var words in (string[])["how do I bake bread", "what is the capital of a country by the sea", "my car does not start in the cold", "", "???"]) Assert.False(Finder.Find(words).Fits, words);
    }

    [Fact]
    public void A_sheet_of_the_other_game_is_not_offered()
    {
        Assert.DoesNotContain(Finder.Find("she left third before the pitcher let go of it", 10, "baseball").Subjects, s => Shelf.Codes.Sheet(s.Sheet)!.OnlyFor == "softball");
    }

    [Fact]
    public void The_same_words_find_the_same()
    {
        const string words = "batter only hit the white bag on a grounder to short";
        string Told(Finds finds) => string.Join("|", finds.Subjects.Select(s => $"{s.Sheet} {s.Fit} {string.Join(",", s.Facts)}"));
        Assert.Equal(Told(Finder.Find(words)), Told(Finder.Find(words)));
    }

    private static List<Asked> Read(List<Play> plays)
    {
        var questions = ((string[])["open-1.txt", "open-2.txt"]).SelectMany(n => File.ReadLines(Folder.Of("tests", "Tests", "Finder", "asked", n))).Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split(" | ", 2)).ToLookup(p => p[0], p => p[1]);
        var asked = new List<Asked>();
        var id = "";
        foreach (var line in ((string[])["facts-1.txt", "facts-2.txt"]).SelectMany(n => File.ReadLines(Folder.Of("tests", "Tests", "Finder", "asked", n))).Where(l => l.Length > 0 && l[0] != '#'))
        {
            if (line[0] != ' ') { id = line.Trim(); continue; }
            var way = line.TrimStart()[0] - '0';
            var facts = line[(line.IndexOf(':') + 1)..].Split(" ! ")[0].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Where(f => f != "-").ToList();
            asked.Add(new(id, way, way == 0 ? plays.Single(p => p.Id == id).Situation : questions[id].ElementAt(way - 1), facts));
        }
        return asked;
    }

    /// <summary>What the play itself says of its facts; where it leaves several values, each of them.</summary>
    private static HashSet<string> Facts(Play play)
    {
        var found = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        if (Casebook.Table(Shelf.Codes, play.Code, play.Sheet, Shelf.Today, play.File, []) is not { } table) return found;
        var known = Timeline.Tell(Situation.Read(table.Sheet, play.File, play.Given, []), play.File, play.Happened, []);
        foreach (var fact in table.Sheet.Bound.Facts.Where(f => known.IsKnown(f.Index)))
            for (var v = 0; v < fact.Values.Count; v++)
                if ((known.Known[fact.Index] >> v & 1) != 0) found.Add($"{fact.Name} is {fact.Values[v]}");
        return found;
    }
}
