using Umpirage.Rules.Codes;

namespace Umpirage.Bench;

/// <summary>How large the compiled code of one division is.</summary>
internal static class PackBench
{
    public static void Run()
    {
        var book = Shelf.Read();
        foreach (var game in book.Roster.Games)
            foreach (var division in book.Roster.Divisions)
            {
                var pack = Pack.Of(book, Shelf.Code(book, $"{game}/{division}"), []);
                Console.WriteLine($"pack {pack.Address}: {pack.Sheets.Count} sheets, {pack.Write().Length / 1000.0:F1} kB compressed (bar 300 kB)");
            }
    }
}
