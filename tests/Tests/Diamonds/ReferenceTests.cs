using Umpirage.District.Diamonds;

namespace Umpirage.Tests.Diamonds;

/// <summary>The least-squares core against the certified values of NIST's reference data sets (StRD).</summary>
public class ReferenceTests(ITestOutputHelper output)
{
    private static Twofold[][] Design(string name, double[][] data) =>
    [
        .. data.Select(d => name switch
        {
            "NoInt1" or "NoInt2" => [d[1]],
            "Longley" => [1, .. d[1..].Select(x => (Twofold)x)],
            "Norris" => Powers(d[1], 1),
            "Pontius" => Powers(d[1], 2),
            "Filip" => Powers(d[1], 10),
            _ => Powers(d[1], 5),
        }),
    ];

    private static Twofold[] Powers(double x, int degree)
    {
        var powers = new Twofold[degree + 1];
        powers[0] = 1;
        for (var p = 1; p <= degree; p++) powers[p] = powers[p - 1] * x;
        return powers;
    }

    private static readonly string[] Straight = ["Norris", "Pontius", "NoInt1", "NoInt2", "Filip", "Longley", "Wampler1", "Wampler2", "Wampler3", "Wampler4", "Wampler5"];

    private static Strd Read(string name)
    {
        var file = Folder.Shared("data", "nist_strd", name + ".dat");
        if (file is not null) return Strd.Read(file);
        if (ReferenceSets.All.FirstOrDefault(s => s.Name == name) is not { } typed) { Assert.Skip("the reference data is not beside the project"); throw new InvalidOperationException(); }
        return typed;
    }

    private static IEnumerable<string> AtHand(IEnumerable<string> names) =>
        Folder.Shared("data", "nist_strd") is null ? names.Where(n => ReferenceSets.All.Any(s => s.Name == n)) : names;

    [Fact]
    public void What_is_typed_in_is_what_the_files_hold()
    {
        if (Folder.Shared("data", "nist_strd") is null) Assert.Skip("the reference data is not beside the project");
        foreach (var typed in ReferenceSets.All)
        {
            var file = Read(typed.Name);
            Assert.Equal(file.Data, typed.Data);
            Assert.Equal(file.Certified, typed.Certified);
            Assert.Equal(file.Starts, typed.Starts);
        }
    }

    [Fact]
    public void Straight_sets_come_out_to_nine_digits()
    {
        var table = new List<string>();
        foreach (var name in AtHand(Straight))
        {
            var set = Read(name);
            var fit = StraightFit.Of(Design(name, set.Data), [.. set.Data.Select(d => d[0])])!;
            table.Add($"{name}: {set.Digits(fit.Coefficients):0.0} digits, deviations {fit.Deviations.Zip(set.Deviations, Strd.Digits).Min():0.0}");
        }
        foreach (var line in table) output.WriteLine("straight fit " + line);
        Assert.All(table, line => Assert.True(double.Parse(line.Split(": ")[1].Split(' ')[0]) >= 9, line));
    }

    [Fact]
    public void Curved_sets_come_out_to_six_digits_from_start_2_and_four_from_start_1()
    {
        var table = new List<string>();
        var wrong = new List<string>();
        foreach (var name in AtHand(Models.All.Keys))
        {
            var set = Read(name);
            var line = $"{name}:";
            foreach (var (start, least) in ((int, double)[])[(0, 4), (1, 6)])
            {
                var fit = CurvedFit.Of(set.Starts[start], Models.Residuals(name, set.Data), Models.Slopes(name, set.Data));
                var digits = fit is null ? 0 : set.Digits(fit.Parameters);
                line += $" start {start + 1} {digits:0.0} digits ({fit?.Rounds} rounds)";
                if (digits < least) wrong.Add($"{name} from start {start + 1}: {digits:0.0}");
            }
            table.Add(line);
        }
        foreach (var line in table) output.WriteLine("curved fit " + line);
        Assert.Empty(wrong);
    }
}
