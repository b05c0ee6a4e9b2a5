namespace Umpirage.Bench;

internal static class CrossoverBench { public static void Run() { } }
