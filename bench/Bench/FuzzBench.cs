namespace Umpirage.Bench;

internal static class FuzzBench { public static void Run() { } }
