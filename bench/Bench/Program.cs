using System.Globalization;
using Umpirage.Bench;

// Prints one section after another; "Bench NAME" runs one of them. bench/long.sh writes the whole to bench/RESULTS.md.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var sections = new (string Name, Action Run)[]
{
    ("rulings", RulingsBench.Run), ("check", CheckBench.Run), ("crossover", CrossoverBench.Run), ("question", QuestionBench.Run), ("pack", PackBench.Run), ("replay", ReplayBench.Run), ("pitchers", PitchersBench.Run), ("schedule", ScheduleBench.Run), ("diamonds", DiamondBench.Run), ("cards", CardBench.Run), ("desk", DeskBench.Run), ("drill", DrillBench.Run), ("fuzz", FuzzBench.Run),
};
foreach (var (name, run) in sections)
    if (args.Length == 0 ? name != "fuzz" : args.Contains(name)) run();
