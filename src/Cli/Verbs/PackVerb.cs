namespace Umpirage.Cli.Verbs;

internal static class PackVerb
{
    public static int Run(Request request) { Console.Error.WriteLine("not yet"); return Verb.Unusable; }
}
