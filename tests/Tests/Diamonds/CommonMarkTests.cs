using Umpirage.District.Diamonds;

namespace Umpirage.Tests.Diamonds;

/// <summary>Marks of several divisions on one diamond, against published distances and against every pair by itself.</summary>
public class CommonMarkTests
{
    private static readonly (string Name, Layout Layout)[] Layouts = [.. new[] { "softball/10U", "softball/12U", "softball/14U", "baseball/12U" }.Select(c => (c, LayoutTests.Of(c)))];

    private static readonly IReadOnlyList<CommonMark> Marks = CommonMark.Of(Layouts);

    [Fact]
    public void The_plates_lie_where_the_field_table_has_them()
    {
        // 35, 40 and 43 ft: US softball association field table, Rule 2-1; 46 ft: a national youth games field rule, 14.02 m
        var plate = Marks.Single(m => m.Name == LayoutTests.Plate);
        Assert.Equal([35, 40, 43, 46], plate.Places.Select(p => p.At.Length).Order());
        Assert.Equal(3, plate.Nearest!.Value, 9);
        Assert.Equal(Fit.Apart, plate.Fit);
        var first = Marks.Single(m => m.Name == "first");
        Assert.Equal(Layouts.Select(l => l.Name), Assert.Single(first.Places).Who);
        Assert.Equal(Fit.Shared, first.Fit);
    }

    [Fact]
    public void Every_mark_stands_as_its_pairs_do()
    {
        // every pair by itself: an eighth of an inch is one mark, and what lies nearer than the code's chalk clashes
        var near = Layouts.Max(l => l.Layout.Measures.Feet("chalk too near other chalk"));
        foreach (var mark in Marks)
        {
            var at = Layouts.Select(l => l.Layout.Find(mark.Name)).OfType<At>().ToList();
            var fits = at.SelectMany((a, i) => at.Skip(i + 1).Select(b => Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2)))).Select(d => d <= 1 / 96.0 ? Fit.Shared : d <= near ? Fit.Clashing : Fit.Apart).ToHashSet();
            var worst = fits.Contains(Fit.Clashing) ? Fit.Clashing : fits.Contains(Fit.Apart) ? Fit.Apart : Fit.Shared;
            Assert.Equal(worst, mark.Fit);
            Assert.Equal(Layouts.Length, mark.Places.Sum(p => p.Who.Count) + mark.Without.Count);
        }
        Assert.Contains(Marks, m => m.Fit == Fit.Clashing);
        Assert.Contains(Marks, m => m.Without.Count > 0);
    }
}
