using Umpirage.Solve.Crews.Trips;

namespace Umpirage.Tests.Solve;

/// <summary>A double round robin of four teams, small enough to try everything, and the published optima where the instances are at hand (Trick and Yildiz 2007; best known values as kept publicly in September 2026).</summary>
public class TripTests
{
    private const string Four = "nTeams=4; dist=[ [0 7 9 5] [7 0 4 8] [9 4 0 6] [5 8 6 0] ]; opponents=[ [2 -1 4 -3] [3 4 -1 -2] [-4 3 -2 1] [-2 1 -4 3] [-3 -4 1 2] [4 -3 2 -1] ];";

    [Theory, InlineData(1, 1), InlineData(2, 1), InlineData(2, 2), InlineData(3, 1), InlineData(3, 2)]
    public void What_is_found_is_the_least_of_all(int q1, int q2)
    {
        var task = TripTask.Read(Four, q1, q2);
        long? least = null;
        for (var way = 0; way < 1 << 5; way++)
        {
            // two crews: in every round the first has the first or the second game
            var first = Enumerable.Range(0, 6).Select(r => r == 0 ? 0 : way >> (r - 1) & 1).ToArray();
            long cost = 0;
            var fine = true;
            foreach (var own in new[] { first, [.. first.Select(g => 1 - g)] })
            {
                fine &= own.Select((g, r) => task.Home[r][g]).Distinct().Count() == 4;
                for (var r = 0; r < 6; r++)
                    for (var s = r + 1; s < 6; s++)
                    {
                        int[] a = [task.Home[r][own[r]], task.Away[r][own[r]]], b = [task.Home[s][own[s]], task.Away[s][own[s]]];
                        if (s == r + 1) cost += task.Distance[a[0]][b[0]];
                        fine &= !(s - r < q1 && a[0] == b[0]) && !(s - r < q2 && a.Intersect(b).Any());
                    }
            }
            if (fine && (least is null || cost < least)) least = cost;
        }
        var found = TripSearch.Find(task, 20);
        Assert.Equal(least, found.Cost);
        Assert.Equal(least is null ? "infeasible" : "optimal", found.Status);
    }

    [Theory]
    [InlineData("umps8", 4, 2, 34311), InlineData("umps8A", 4, 2, 31490), InlineData("umps8B", 4, 2, 32731), InlineData("umps8C", 4, 2, 29879), InlineData("umps10", 5, 2, 48942)]
    public void Published_optima(string name, int q1, int q2, long cost)
    {
        var file = Folder.Shared("data", "tup", "instances", name + ".txt");
        Assert.SkipWhen(file is null, "the instances are research data beside the project; this clone stands alone");
        var found = TripSearch.Find(TripTask.Read(File.ReadAllText(file), q1, q2), 60);
        Assert.Equal((cost, cost, "optimal"), (found.Cost, found.Bound, found.Status));
    }

    [Theory]
    [InlineData("nTeams=4; opponents=[];", "found no 'dist' with 'opponents' after it"), InlineData("nTeams=5; dist=[]; opponents=[];", "allowed is an even number from 2 to 32"),
        InlineData("nTeams=2; dist=[0 1 1]; opponents=[2 -1 -2 1];", "dist: found 3 numbers; allowed is 2 times 2"), InlineData("nTeams=2; dist=[0 1 1 0]; opponents=[2 1 -2 -1];", "opponents, round 1: teams do not meet in pairs")]
    public void What_is_no_instance_is_told(string text, string said) => Assert.Contains(said, Assert.Throws<InvalidDataException>(() => TripTask.Read(text, 1, 1)).Message);
}
