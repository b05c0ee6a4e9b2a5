// TripsCheck INSTANCE Q1 Q2 SOLUTION: holds a solution (a line a crew, the venue of each round, any words before a colon) against an instance.
// Written apart from the search and sharing nothing with it. Prints every fault, then: cost C, or refused.
if (args.Length != 4) { Console.Error.WriteLine("write: TripsCheck INSTANCE Q1 Q2 SOLUTION"); return 2; }
var (q1, q2) = (int.Parse(args[1]), int.Parse(args[2]));
var words = File.ReadAllText(args[0]).Split([' ', '\t', '\r', '\n', '[', ']', ';', '='], StringSplitOptions.RemoveEmptyEntries);
var n = int.Parse(words[Array.IndexOf(words, "nTeams") + 1]);
int[] After(string word, int count) => [.. words.Skip(Array.IndexOf(words, word) + 1).Take(count).Select(int.Parse)];
var rounds = 2 * n - 2;
var (dist, opponents) = (After("dist", n * n), After("opponents", rounds * n));
var crews = File.ReadAllLines(args[3]).Where(l => l.Trim() != "").Select(l => l[(l.LastIndexOf(':') + 1)..].Split([' ', '\t', ','], StringSplitOptions.RemoveEmptyEntries).Select(int.Parse).ToArray()).ToArray();
var faults = new List<string>();
long cost = 0;
if (crews.Length != n / 2) faults.Add($"{crews.Length} crews, not {n / 2}");
foreach (var (crew, c) in crews.Select((v, c) => (v, c + 1)))
{
    if (crew.Length != rounds) { faults.Add($"crew {c}: {crew.Length} rounds, not {rounds}"); continue; }
    for (var r = 0; r < rounds; r++)
    {
        if (crew[r] < 1 || crew[r] > n || opponents[r * n + crew[r] - 1] < 0) { faults.Add($"crew {c}, round {r + 1}: nobody plays at {crew[r]}"); continue; }
        if (r > 0) cost += dist[(crew[r - 1] - 1) * n + crew[r] - 1];
        for (var s = r + 1; s < rounds; s++)
        {
            int[] here = [crew[r], Math.Abs(opponents[r * n + crew[r] - 1])], there = crew[s] >= 1 && crew[s] <= n ? [crew[s], Math.Abs(opponents[s * n + crew[s] - 1])] : [];
            if (s - r < q1 && crew[r] == crew[s]) faults.Add($"crew {c}: at {crew[r]} in rounds {r + 1} and {s + 1}");
            if (s - r < q2 && here.Intersect(there).Any()) faults.Add($"crew {c}: the same team in rounds {r + 1} and {s + 1}");
        }
    }
    foreach (var missing in Enumerable.Range(1, n).Except(crew)) faults.Add($"crew {c}: never at {missing}");
}
if (crews.All(c => c.Length == rounds))
    for (var r = 0; r < rounds; r++)
        if (crews.Select(c => c[r]).Distinct().Count() != crews.Length) faults.Add($"round {r + 1}: two crews at one venue");
foreach (var fault in faults) Console.WriteLine(fault);
Console.WriteLine(faults.Count == 0 ? $"cost {cost}" : "refused");
return faults.Count == 0 ? 0 : 1;
