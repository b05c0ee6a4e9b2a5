namespace Umpirage.Bench;

internal static class QuestionBench { public static void Run() { } }
