using System.Globalization;
using Umpirage.Solve.Crews.Trips;

// Trips INSTANCE Q1 Q2 SECONDS [SOLUTION]: solves one crew-travel instance. The solution is a line a crew, the venue of each round; TripsCheck
// holds it against the instance. The last line is: cost C bound B status S.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args.Length < 4 || !File.Exists(args[0]) || !int.TryParse(args[1], out var q1) || !int.TryParse(args[2], out var q2) || !double.TryParse(args[3], out var seconds))
{
    Console.Error.WriteLine("write: Trips INSTANCE Q1 Q2 SECONDS [SOLUTION]");
    return 2;
}
TripTask task;
try { task = TripTask.Read(File.ReadAllText(args[0]), q1, q2); }
catch (InvalidDataException fault) { Console.Error.WriteLine($"{args[0]}, {fault.Message}"); return 2; }
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) => { pressed.Cancel = true; stop.Cancel(); };
var result = TripSearch.Find(task, seconds, stop.Token);
if (result.Venues is { } venues)
{
    var lines = venues.Select((v, c) => $"crew {c + 1}: {string.Join(' ', v.Select(x => x + 1))}").ToList();
    if (args.Length > 4) File.WriteAllLines(args[4], lines);
    else foreach (var line in lines) Console.WriteLine(line);
}
Console.WriteLine($"{Path.GetFileNameWithoutExtension(args[0])} q1 {q1} q2 {q2}: {result.Nodes} branches, {result.Seconds:0.0} s");
Console.WriteLine($"cost {(result.Cost is { } cost ? cost.ToString() : "none")} bound {result.Bound} status {result.Status}");
return 0;
