using Umpirage.District.Diamonds;

namespace Umpirage.Tests.District;

public class PictureTests
{
    [Fact]
    public void Every_picture_of_the_codes_can_be_read()
    {
        var findings = new List<Finding>();
        var pictures = Shelf.Files(Folder.Of("codes", "pictures"), "*.picture").Select(f => Picture.Read(Path.GetFileName(f), File.ReadAllText(f), Shelf.Codes, findings)).ToList();
        Assert.Empty(findings);
        Assert.True(pictures.Count >= 10);
    }

    [Fact]
    public void Every_fault_of_a_picture_is_told_at_once()
    {
        var findings = new List<Finding>();
        Assert.Null(Picture.Read("x.picture", "Picture: double first base\nview: first base\nher foot is purple: runner at white half\nher foot is neither: giraffe at white half\nher foot is neither: runner at the moon\nnonsense", Shelf.Codes, findings));
        Assert.Equal([3, 4, 5, 6], findings.Select(f => f.Line));
        Assert.All(findings, f => Assert.NotEqual("", f.Message));
    }

    [Fact]
    public void A_play_is_pictured_by_what_is_said_of_it()
    {
        var picture = Picture.Read("x.picture", File.ReadAllText(Folder.Of("codes", "pictures", "double-first-base.picture")), Shelf.Codes, [])!;
        var placed = picture.Of(["her foot is white part only", "appeal is none"]).ToList();
        Assert.Equal((Figure.Runner, "white half"), (placed.Single().Figure, placed.Single().Spot));
    }

    [Fact]
    public void Spots_lie_inside_their_view() =>
        Assert.All(Views.All, v => Assert.All(v.Spots.Values, s => Assert.True(s is { X: >= 0 and <= 100, Y: >= 0 and <= 100 })));
}
