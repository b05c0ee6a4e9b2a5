namespace Umpirage.Bench;

internal static class PackBench { public static void Run() { } }
