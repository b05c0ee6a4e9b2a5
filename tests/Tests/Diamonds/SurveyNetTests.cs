using System.Globalization;
using Umpirage.District.Diamonds;

namespace Umpirage.Tests.Diamonds;

/// <summary>Points found from tapes: a worked case made outside this program, and simulated surveys whose truth is known.</summary>
public class SurveyNetTests(ITestOutputHelper output)
{
    [Fact]
    public void Five_stakes_give_the_point_to_nine_digits()
    {
        // constructed case, solved outside this program to nine digits (research data of the project, geometry/multilateration)
        (double X, double Y, double Feet, double Residual)[] stakes =
        [
            (0, 0, 40.85, 0.000344215), (60, 0, 52.02, 0.009789044), (60, 60, 46.11, -0.008390645), (0, 60, 33.02, -0.003299196), (30, -20, 55.48, -0.014115965),
        ];
        var pins = stakes.Select((s, i) => new Pin($"{i}", new(s.X, s.Y), Hold.Known)).Append(new("p", new(30, 30), Hold.Free)).ToList();
        var net = TapeNet.Of(pins, [.. stakes.Select((s, i) => new Reading($"{i}", "p", s.Feet))], 1)!;
        Near(21.363602784, net["p"].X);
        Near(34.817967400, net["p"].Y);
        Near(0.011202559, net.Shown);
        var (xx, xy, yy) = net.Spread("p");
        Near(0.008020788, net.Shown * Math.Sqrt(xx));
        Near(0.006467213, net.Shown * Math.Sqrt(yy));
        Near(0.000005119906, net.Shown * net.Shown * xy);
        for (var i = 0; i < stakes.Length; i++) Assert.Equal(stakes[i].Residual, net.Leftover(i), 9);

        // the printed values are rounded to nine decimals, the last with twelve
        static void Near(double printed, double found)
        {
            var decimals = printed.ToString("0.############", CultureInfo.InvariantCulture).Split('.')[1].Length;
            Assert.Equal(printed, found, Math.Max(9, decimals));
        }
    }

    /// <summary>Where the simulated points are taped from: the corners of a 60 ft square, and two posts behind the plate on either side, which the line of bases does not hold in a row.</summary>
    private static readonly Pin[] Known =
    [
        new("home", new(0, 0), Hold.Known), new("first", new(42.4264, 42.4264), Hold.Known), new("second", new(0, 84.8528), Hold.Known), new("third", new(-42.4264, 42.4264), Hold.Known),
        new("right post", new(25, -20), Hold.Known), new("left post", new(-25, -20), Hold.Known),
    ];

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void A_blunder_is_named_and_the_intervals_cover(int tapes)
    {
        // truth, noise of 0.02 ft and one blunder of 0.5 ft are ours; the 95 % interval is 1.96 deviations (normal)
        const double Noise = 0.02, Blunder = 0.5;
        var runs = Folder.Count(2000, 10_000);
        var random = new Random(20260516);
        int named = 0, covered = 0, intervals = 0;
        for (var run = 0; run < runs; run++)
        {
            // a point on or near the infield, taped from the first known points in a drawn order that do not leave two tapes in one line
            At truth;
            Pin[] from;
            do
            {
                truth = new(random.NextDouble() * 60 - 30, random.NextDouble() * 60 + 10);
                from = [.. Known.OrderBy(_ => random.Next()).Take(tapes)];
            }
            while (!Tells(truth, from));
            var wrong = random.Next(tapes);
            List<Reading> readings = [.. from.Select((k, i) => new Reading(k.Name, "p", k.At.To(truth) + Noise * Normal(random) + (i == wrong ? random.Next(2) == 0 ? Blunder : -Blunder : 0)))];
            List<Pin> pins = [.. from, new("p", new(truth.X + 2, truth.Y - 2), Hold.Free)];
            var (net, suspects) = Suspect.Hunt(TapeNet.Of(pins, readings, Noise)!, pins);
            if (suspects.Count > 0 && suspects[0].Reading == readings[wrong]) named++;
            var (xx, _, yy) = net.Spread("p");
            intervals += 2;
            if (Math.Abs(net["p"].X - truth.X) <= 1.96 * Math.Sqrt(xx)) covered++;
            if (Math.Abs(net["p"].Y - truth.Y) <= 1.96 * Math.Sqrt(yy)) covered++;
        }
        var (name, cover) = (100.0 * named / runs, 100.0 * covered / intervals);
        var line = string.Create(CultureInfo.InvariantCulture, $"{tapes} tapes: named {name:0.00} %, covered {cover:0.00} % of {runs} runs");
        output.WriteLine("survey, " + line);
        Assert.True(name >= 95, line);
        Assert.True(cover is >= 94 and <= 96, line);
    }

    [Fact]
    public void The_points_of_a_real_diamond_are_taped_from_six_without_choosing()
    {
        // every staked infield point of a 60 ft layout, from the four corners and two posts, whatever the angles are
        var layout = LayoutTests.Of("softball/12U");
        var truths = layout.Marks.Where(m => m.Staked && m.Made != Made.Fence && !Layout.Corners.Contains(m.Name)).Select(m => m.At).ToList();
        const double Noise = 0.02, Blunder = 0.5;
        var runs = Folder.Count(2000, 10_000);
        var random = new Random(516);
        int named = 0, among = 0, covered = 0;
        for (var run = 0; run < runs; run++)
        {
            var truth = truths[run % truths.Count];
            // a post or corner on the very spot tells nothing
            Pin[] from = [.. Known.Where(k => k.At.To(truth) > 1)];
            var wrong = random.Next(from.Length);
            List<Reading> readings = [.. from.Select((k, i) => new Reading(k.Name, "p", k.At.To(truth) + Noise * Normal(random) + (i == wrong ? random.Next(2) == 0 ? Blunder : -Blunder : 0)))];
            List<Pin> pins = [.. from, new("p", new(truth.X + 1, truth.Y - 1), Hold.Free)];
            var (net, suspects) = Suspect.Hunt(TapeNet.Of(pins, readings, Noise)!, pins);
            if (suspects.Count > 0 && suspects[0].Reading == readings[wrong]) named++;
            if (suspects.Any(s => s.Reading == readings[wrong] || s.Or.Contains(readings[wrong]))) among++;
            var (xx, _, yy) = net.Spread("p");
            if (Math.Abs(net["p"].X - truth.X) <= 1.96 * Math.Sqrt(xx)) covered++;
            if (Math.Abs(net["p"].Y - truth.Y) <= 1.96 * Math.Sqrt(yy)) covered++;
        }
        var (name, told, cover) = (100.0 * named / runs, 100.0 * among / runs, 50.0 * covered / runs);
        var line = string.Create(CultureInfo.InvariantCulture, $"a diamond's points: named {name:0.00} %, named or among those named beside it {told:0.00} %, covered {cover:0.00} % of {runs} runs");
        output.WriteLine("survey, " + line);
        Assert.True(name >= 95, line);
        Assert.True(cover is >= 94 and <= 96, line);
    }

    /// <summary>A net in which no two faults look alike: where two do, the survey says so and names both (see the next test).</summary>
    private static bool Tells(At truth, Pin[] from)
    {
        List<Pin> pins = [.. from, new("p", truth, Hold.Free)];
        var net = TapeNet.Of(pins, [.. from.Select(k => new Reading(k.Name, "p", k.At.To(truth)))], 1)!;
        return Enumerable.Range(0, from.Length).All(i => net.Checked(i) > 0.1 && Enumerable.Range(0, i).All(j => Math.Abs(net.Alike(i, j)) <= 0.9));
    }

    [Fact]
    public void Where_two_faults_look_alike_both_are_named()
    {
        // from the middle of a square the two tapes of a diagonal lie in one line: a long one and a short other leave the same
        var pins = Known[..4].Append(new("p", new(0.1, 42.3), Hold.Free)).ToList();
        var truth = new At(0, 42.4264);
        var readings = Known[..4].Select((k, i) => new Reading(k.Name, "p", k.At.To(truth) + (i == 1 ? 0.5 : 0))).ToList();
        var (_, suspects) = Suspect.Hunt(TapeNet.Of(pins, readings, 0.02)!, pins);
        var named = suspects[0].Or.Append(suspects[0].Reading).Select(r => r.From).Order();
        Assert.Equal(["first", "third"], named);
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
