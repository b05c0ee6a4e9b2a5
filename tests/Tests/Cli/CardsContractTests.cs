using System.Text.Json;
using UglyToad.PdfPig;

namespace Umpirage.Tests.Cli;

/// <summary>The verb of cards as programs rely on it.</summary>
public sealed class CardsContractTests : IDisposable
{
    private readonly OwnDemo demo = new();

    public void Dispose() => demo.Dispose();

    [Fact]
    public void Writes_every_card_and_all_in_one_and_tells_the_stamp()
    {
        var folder = demo.PathOf("out");
        var (code, text, error) = demo.Run("cards", "--game", "S-F6", "--out", folder, "--card", "3x5", "--sheet", "A4", "--json");
        Assert.Equal((0, ""), (code, error));
        using var read = JsonDocument.Parse(text);
        var names = read.RootElement.EnumerateArray().Select(c => c.GetProperty("name").GetString()!).ToList();
        Assert.Equal(["conduct", "crew", "field", "gear", "heat", "line-up", "pitching", "plate", "protest-form", "protest", "weather"], names);
        Assert.Equal([.. names.Append("all").Select(n => n + ".pdf").Order(StringComparer.Ordinal)], Directory.EnumerateFiles(folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));
        var pages = names.Sum(n => Pages(Path.Combine(folder, n + ".pdf")));
        Assert.Equal(pages, Pages(Path.Combine(folder, "all.pdf")));
        Assert.Equal("softball/12U+interleague(Tarnholt,Wrenfall)", read.RootElement[0].GetProperty("stamp").GetProperty("address").GetString());

        static int Pages(string file) { using var pdf = PdfDocument.Open(file); return pdf.NumberOfPages; }
    }

    [Fact]
    public void Tells_every_fault_and_writes_nothing()
    {
        var folder = demo.PathOf("none");
        var (code, _, error) = demo.Run("cards", "--game", "S-F66", "--out", folder);
        Assert.Equal(2, code);
        Assert.StartsWith("there is no game 'S-F66'; ", error);
        (code, _, error) = demo.Run("cards", "--out", folder, "--card", "letter", "--sheet", "A5");
        Assert.Equal(2, code);
        Assert.Equal(["write: ./umpirage cards --game GAME --out FOLDER [--card A6|3x5] [--sheet letter|A4] [--usual CODE]", "there is no paper 'letter' for a card; it may be A6 or 3x5", "there is no paper 'A5' for a sheet; it may be letter or A4"], error.TrimEnd().Split('\n'));
        (code, _, error) = demo.Run("cards", "--game", "S-F6", "--out", folder, "--usual", "BB 11-13");
        Assert.Equal(2, code);
        Assert.Contains("'BB 11-13' is not a code", error);
        Assert.False(Directory.Exists(folder));
    }
}
