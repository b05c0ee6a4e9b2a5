namespace Umpirage.Tests.Codes;

/// <summary>Cases and distinct rulings of every sheet, one line each: any change of meaning moves a line.</summary>
public class TallyTests
{
    [Fact]
    public void The_tally_is_the_one_on_record() =>
        Golden.Golden.Compare(string.Concat(Tally.Of(Shelf.Codes).Select(l => l + "\n")), "casebook", "tally.txt");

    [Fact]
    public void Counts_are_those_of_the_values_multiplied_out()
    {
        // a sheet without impossible combinations has as many cases as its values multiplied; worked out here from the text alone
        foreach (var sheet in Shelf.Codes.Sheets.Where(s => s.Impossible.Count == 0 && s.Uses.Count == 0 && s.Facts.All(f => f.Band is null)))
        {
            var game = sheet.OnlyFor ?? "softball";
            Assert.Equal(sheet.Facts.Aggregate(1L, (n, f) => n * f.Values.Count), (long)Shelf.Table($"{game}/12U", sheet.Name).Cases);
        }
    }
}
