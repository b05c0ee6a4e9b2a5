using System.Diagnostics;
using System.Globalization;
using Umpirage.CrewsBench;
using Umpirage.District.Crews;
using Umpirage.Rules.Codes;
using Umpirage.Solve.Crews;

// CrewsBench [SECONDS] [SEEDS] [GAMES OFFICIALS PARKS]: amateur weekends, ours beside greedy and plain CP-SAT at equal time.
// CrewsBench region [DISTRICTS] [SECONDS] [SECONDS AFTER THE RAIN]: a region's weekend day, two districts at a time, and its crews after a rain-out.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var region = args.Length > 0 && args[0] == "region";
var seconds = args.Length > 0 && !region ? double.Parse(args[0]) : 60;
var seeds = args.Length > 1 && !region ? int.Parse(args[1]) : 3;
var (games, officials, parks) = args.Length > 4 && !region ? (int.Parse(args[2]), int.Parse(args[3]), int.Parse(args[4])) : (500, 750, 65);
var root = AppContext.BaseDirectory;
while (!Directory.Exists(Path.Combine(root, "codes", "sheets"))) root = Path.GetDirectoryName(root) ?? throw new InvalidOperationException("run it inside the project's folder");
var codes = new UmpiresCodes(Codebook.Read(new("roster.txt", File.ReadAllText(Path.Combine(root, "codes", "roster.txt"))),
    Directory.EnumerateFiles(Path.Combine(root, "codes", "sheets"), "*.sheet").Concat(Directory.EnumerateFiles(Path.Combine(root, "codes", "layers"), "*.layer")).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f)))));
if (region) { Region.Run(root, codes, args.Length > 1 ? int.Parse(args[1]) : 20, args.Length > 2 ? double.Parse(args[2]) : 20, args.Length > 3 ? double.Parse(args[3]) : 5); return; }
Console.WriteLine($"amateur weekends: {games} games, {officials} officials, {parks} parks; {seconds:0} s each");
Console.WriteLine("seed  who       plates open  bases open  spread of shares  against a rule  seconds  bound");
for (var seed = 1; seed <= seeds; seed++)
{
    var plan = CrewPlan.Of(Amateur.Make(seed, games, officials, parks), codes);
    var all = plan.Games.OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal).ToList();
    var most = Forecast.Most(plan, all);
    var clock = Stopwatch.StartNew();
    var seats = Plain.Seats(plan);
    Tell("greedy", plan.With(Plain.Greedy(seats).Select(s => (s.Game, s.Place, s.Person))), clock.Elapsed.TotalSeconds, "");
    clock.Restart();
    var (chosen, bound) = Plain.Model(seats, seconds, 2);
    Tell("plain", plan.With(chosen.Select(s => (s.Game, s.Place, s.Person))), clock.Elapsed.TotalSeconds, $"sum at least {bound:0}");
    clock.Restart();
    var ours = CrewSearch.Find(new(plan, all, Seconds: seconds));
    Tell("ours", ours.Plan, clock.Elapsed.TotalSeconds, string.Join("; ", ours.Stages.Where(s => s.Priority is not "youth bases dropped" and not "changes to what is published").Select(s => $"{s.Value} of at least {s.Bound}")) + $"; {all.Sum(g => g.Division.Crew) - most} open in any plan");

    void Tell(string who, CrewPlan found, double time, string note)
    {
        var open = all.SelectMany(found.Open).ToList();
        var fair = Fairness.Of(found, Amateur.Saturday.AddDays(-5), Amateur.Saturday.AddDays(1));
        Console.WriteLine($"{seed,4}  {who,-8}  {open.Count(p => p == CrewPlace.Plate),11}  {open.Count(p => p != CrewPlace.Plate),10}  {fair.Spread,16:0.000}  {CrewCheck.All(found).Count(b => b.Hold != Hold.Wish),14}  {time,7:0.0}  {note}");
    }
}
