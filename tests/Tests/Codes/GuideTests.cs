namespace Umpirage.Tests.Codes;

/// <summary>What the guide shows is what the program reads.</summary>
public class GuideTests
{
    private static string[] Blocks { get; } = [.. File.ReadAllText(Folder.Of("codes", "GUIDE.md")).Split("```").Where((_, i) => i % 2 == 1).Select(b => b.Trim('\n'))];

    [Fact]
    public void The_sample_sheet_has_no_findings() =>
        Assert.Empty(Checker.Check(Shelf.Of(Blocks.Single(b => b.StartsWith("Sheet:")))));

    [Fact]
    public void The_sample_play_is_ruled_on_the_sample_sheet()
    {
        var findings = new List<Finding>();
        var play = PlayReader.Read("a.play", Blocks.Single(b => b.StartsWith("Play:")), findings);
        var outcome = Casebook.Hold(Shelf.Of(Blocks.Single(b => b.StartsWith("Sheet:"))), play, Shelf.Today);
        Assert.Empty(findings);
        Assert.Empty(outcome.Misses);
    }

    [Fact]
    public void The_sample_layer_can_be_read()
    {
        var findings = new List<Finding>();
        var layer = LayerReader.Read("a.layer", Blocks.Single(b => b.StartsWith("Layer:")), Shelf.Roster, findings);
        Assert.Empty(findings);
        Assert.Equal(("Hilltop", 1), (layer.Name, layer.Changes.Count));
    }

    [Fact]
    public void The_sample_sentences_are_all_the_sample_sheet_needs()
    {
        var (book, findings) = (Shelf.Of(Blocks.Single(b => b.StartsWith("Sheet:"))), new List<Finding>());
        var common = new SourceText("common.phrases", File.ReadAllText(Folder.Of("codes", "phrases", "common.phrases")).Replace("caution safety", "caution running"));
        var phrases = Umpirage.District.Clinic.PhraseReader.Read([common, new("sample.phrases", Blocks.Single(b => b.StartsWith("Phrases:")))], book, findings);
        Assert.Empty(findings);
        Assert.Empty(Umpirage.District.Clinic.PhraseReader.Missing(phrases, book));
    }
}
