namespace Umpirage.Solve;

/// <summary>How long and how a search may work. One worker and the same seed find the same answer again, unless time runs out.</summary>
/// <param name="Seconds">Of the clock, for the whole search.</param>
public sealed record Effort(double Seconds = 8, int Workers = 1, int Seed = 7)
{
    internal string Settings(double secondsLeft) => FormattableString.Invariant($"num_workers:{Workers} random_seed:{Seed} max_time_in_seconds:{Math.Max(0.1, secondsLeft):0.###}");
}
