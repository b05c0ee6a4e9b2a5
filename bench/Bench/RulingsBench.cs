namespace Umpirage.Bench;

internal static class RulingsBench { public static void Run() { } }
