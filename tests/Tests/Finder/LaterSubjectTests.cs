using Umpirage.Finder;

namespace Umpirage.Tests.Finder;

/// <summary>A subject that came after what was learned is found by likeness to what is said of it, beside those that were learned. The subject is invented.</summary>
public class LaterSubjectTests
{
    private const string Sheet = """
        Sheet: rain cover
        group: game
        about: Who lays the cover over the field when it rains.

        Facts
          cover : at hand | missing
            ask: Is there a cover?
          outs : none | one | two
            ask: How many are out?

        Decides
          laid by : home team | nobody

        Rule R1: the home team lays it
          cite: invented for this test | common practice, no source
          then laid by is home team
          Except R1a: no cover
            cite: invented for this test | common practice, no source
            when cover is missing
            then laid by is nobody
        """;

    private const string Asked = """
        Asked: rain cover

          Who has to pull the tarp over the infield when it starts to pour?
          The tarpaulin is too heavy for us, must the visitors help to spread it?
          It rains and nobody rolls out the cover. Whose job is that?
          There is no tarp at this field, so what do we lay on the dirt?
          Grounds crew is gone, do the players unroll the big sheet over the mound?
          The plastic cover for the infield was forgotten in the shed.
        """;

    private static (Codebook Book, Material Material) Codes()
    {
        var folder = Folder.Of("codes");
        var book = Codebook.Read(("roster.txt", File.ReadAllText(Path.Combine(folder, "roster.txt"))),
            Shelf.Files(folder, "*.sheet").Concat(Shelf.Files(folder, "*.layer")).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))).Append(new("rain-cover.sheet", Sheet)));
        var material = Material.Read(folder, Folder.Of("casebook"));
        return (book, material with { Asked = [.. material.Asked, new("rain-cover.asked", Asked)], Plays = [] });
    }

    [Fact]
    public void It_is_found_beside_the_learned_ones_and_kept()
    {
        var (book, material) = Codes();
        var cache = Path.Combine(Directory.CreateTempSubdirectory("later").FullName, "finder.index");
        var told = new List<string>();
        var finder = SubjectFinder.Open(book, material, cache, told.Add);
        Assert.Single(told);
        Assert.Contains("found by likeness alone: rain cover", finder.Figures);
        Assert.Equal("rain cover", finder.Find("wet field, is it the home side that drags the tarp out over the diamond").Subjects[0].Sheet);
        Assert.NotEqual("rain cover", finder.Find("batter hit by a pitch that bounced first").Subjects[0].Sheet);
        // its facts are read only where the synonyms leave no doubt
        Assert.Equal(["outs is two"], finder.Read("two outs, it rains and the tarp is gone", "rain cover").Select(f => $"{f.Fact} is {f.Value}"));

        SubjectFinder.Open(book, material, cache, told.Add);
        Assert.Single(told);
        File.WriteAllText(cache, "not an index");
        SubjectFinder.Open(book, material, cache, told.Add);
        Assert.Equal(2, told.Count);
        Directory.Delete(Path.GetDirectoryName(cache)!, true);
    }

    [Fact]
    public void Where_nothing_was_learned_likeness_alone_finds()
    {
        var (_, material) = Codes();
        var book = Codebook.Read(("roster.txt", File.ReadAllText(Folder.Of("codes", "roster.txt"))), [new("rain-cover.sheet", Sheet), new("walk.sheet", Sheet.Replace("rain cover", "walk").Replace("Who lays the cover over the field when it rains.", "Four balls and the batter goes to first."))]);
        var finder = SubjectFinder.Open(book, new([], [new("rain-cover.asked", Asked)], [], material.Synonyms), null);
        Assert.Equal("rain cover", finder.Find("must we spread the tarp ourselves").Subjects[0].Sheet);
    }
}
