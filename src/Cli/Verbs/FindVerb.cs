using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

/// <summary>From plain words to the subjects they may be about, with the facts the words state.</summary>
internal static class FindVerb
{
    private const int Most = 3;

    public static int Run(Request request)
    {
        if (request.Words.Count == 0) { Console.Error.WriteLine("say what happened, in quotes: ./umpirage find \"she left third before the pitch\""); return Verb.Unusable; }
        var book = Library.Codes(request);
        if (request.Words[0] == "--learn") { Console.Write(Library.Finder(request, book).Figures); return Verb.Fine; } // the launcher, after a build
        string? game = null;
        if (request.Words.Count > 1)
        {
            if (Casebook.Code(book, request.Words[1], request.Today, Console.Error.WriteLine) is not { } code) return Verb.Unusable;
            game = code.Game;
        }
        var finder = Library.Finder(request, book);
        var finds = finder.Find(request.Words[0], Most, game);
        if (request.Json) Json.Write(finds);
        else
        {
            Console.WriteLine(finds.Fits ? "THE QUESTION MAY BE ABOUT" : finds.Subjects.Count == 0 ? "there are no words in this question" : "no subject fits these words; the nearest are");
            for (var i = 0; i < finds.Subjects.Count; i++)
            {
                var found = finds.Subjects[i];
                Console.WriteLine($"\n  {i + 1}  {found.Sheet}: {found.About}");
                foreach (var fact in found.Facts) Console.WriteLine($"       {fact.Fact} is {fact.Value}   (\"{fact.Words}\")");
            }
            if (finds.Fits) Console.WriteLine($"\ngo on with: ./umpirage ask {Quoted(finds.Subjects[0].Sheet)}{(request.Words.Count > 1 ? " " + Quoted(request.Words[1]) : "")}");
        }
        return finds.Fits ? Verb.Fine : Verb.No;
    }

    private static string Quoted(string name) => name.Contains(' ') || name.Contains('\'') ? $"\"{name}\"" : name;
}
