using System.Text;

namespace Umpirage.Tests.Codes;

/// <summary>
/// One broken sheet a file, one fault each (some with a local layer or a play behind a line of "==="), and the message each gets. The
/// messages are on record in bad/messages.txt, to be read as a person would who made the mistake.
/// </summary>
public class MessageTests
{
    private static IEnumerable<(string Name, IReadOnlyList<Finding> Findings, IReadOnlyList<string> Misses)> Broken()
    {
        foreach (var file in Shelf.Files(Folder.Of("tests", "Tests", "Codes", "bad"), "*.sheet"))
        {
            var parts = File.ReadAllText(file).Split("=== ");
            var texts = parts.Skip(1).Select(p => p.Split('\n', 2)).Select(p => (File: p[0].Trim(), Text: p[1])).Prepend((File: Path.GetFileName(file), Text: parts[0])).ToList();
            var book = Codebook.Read(("roster.txt", Shelf.RosterText), texts.Where(t => !t.File.EndsWith(".play")).Select(t => new SourceText(t.File, t.Text)));
            var findings = Checker.Check(book).ToList();
            var misses = texts.Where(t => t.File.EndsWith(".play")).SelectMany(t => Casebook.Hold(book, PlayReader.Read(t.File, t.Text, findings), Shelf.Today).Misses).ToList();
            yield return (Path.GetFileNameWithoutExtension(file), findings, misses);
        }
    }

    [Fact]
    public void Every_message_is_the_one_on_record()
    {
        var text = new StringBuilder();
        foreach (var (name, findings, misses) in Broken())
        {
            text.AppendLine(name);
            foreach (var finding in findings.Take(6)) text.AppendLine($"  {finding.Kind}: {finding}");
            foreach (var miss in misses) text.AppendLine($"  {miss}");
        }
        Golden.Golden.Compare(text.ToString(), "tests", "Tests", "Codes", "bad", "messages.txt");
    }

    [Fact]
    public void Every_broken_sheet_is_found_out()
    {
        var broken = Broken().ToList();
        Assert.True(broken.Count >= 60, $"{broken.Count} broken sheets");
        Assert.Empty(broken.Where(b => b.Findings.Count + b.Misses.Count == 0).Select(b => b.Name));
    }

    [Fact]
    public void Every_kind_of_finding_has_three_broken_sheets()
    {
        var kinds = new Dictionary<FindingKind, int>();
        foreach (var (name, findings, misses) in Broken())
            foreach (var kind in findings.Select(f => f.Kind).Concat(misses.Count > 0 && name.StartsWith("play-") ? [FindingKind.ImpossiblePlay] : []).Distinct())
                kinds[kind] = kinds.GetValueOrDefault(kind) + 1;
        foreach (var kind in Enum.GetValues<FindingKind>()) Assert.True(kinds.GetValueOrDefault(kind) >= 3, $"{kind}: {kinds.GetValueOrDefault(kind)}");
    }

    [Fact]
    public void A_gap_and_a_conflict_are_shown_by_a_case_in_which_they_happen()
    {
        // the witness, read back as a situation, must be possible and hit the fault: judged by asking each rule in turn, not by the checker
        foreach (var file in Shelf.Files(Folder.Of("tests", "Tests", "Codes", "bad"), "*.sheet").Where(f => Path.GetFileName(f).StartsWith("gap-") || Path.GetFileName(f).StartsWith("conflict-")))
        {
            var text = File.ReadAllText(file).Split("=== ")[0];
            var book = Shelf.Of(text);
            if (book.Bind(book.Sheets.Single(), [], []) is not { } bound || CodeSheet.Of(bound, Shelf.Code(book, "softball/12U"), []) is not { } under) continue;
            foreach (var fault in Table.Of(under).Faults)
            {
                var facts = fault.Space.Take(under.FactCount).Select(m => System.Numerics.BitOperations.TrailingZeroCount(m)).ToArray();
                Assert.DoesNotContain(under.Impossible, i => i.Holds(facts));
                var all = fault.Space.Select(m => System.Numerics.BitOperations.TrailingZeroCount(m)).ToArray();
                var said = under.Entries[fault.Decision - under.FactCount].Where(e => e.Holds(all)).Select(e => e.Value).Distinct().Count();
                Assert.NotEqual(1, said);
            }
        }
    }

    [Fact]
    public void The_sound_sheet_from_which_they_are_broken_has_no_finding() =>
        Assert.Empty(Checker.Check(Shelf.Of(File.ReadAllText(Folder.Of("tests", "Tests", "Codes", "good", "leaving-early.sheet")))));
}
