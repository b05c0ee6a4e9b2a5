namespace Umpirage.Cli.Verbs;

internal static class AskVerb
{
    public static int Run(Request request) { Console.Error.WriteLine("not yet"); return Verb.Unusable; }
}
