using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Cards;
using Umpirage.District.Demo;
using Umpirage.Paper;
using Umpirage.Store;

namespace Umpirage.Bench;

/// <summary>Every card of every game of the demonstration's Saturday: drawn from the store, said and printed.</summary>
internal static class CardBench
{
    public static void Run()
    {
        var folder = Directory.CreateTempSubdirectory("umpirage-cards-").FullName;
        try
        {
            var place = Place.InFile(Path.Combine(folder, "demo.db"));
            using var store = place.Ready();
            store.Actor = "bench";
            store.Today = DateOnly.FromDateTime(Oslemoor.Now);
            Seed.Demo(store, name => File.ReadAllText(Path.Combine(Shelf.Root, "demo", "oslemoor", name)));
            var codes = new CardCodes(Shelf.Read());
            var plans = Directory.EnumerateFiles(Path.Combine(Shelf.Root, "codes", "cards"), "*.card").Order(StringComparer.Ordinal).Select(f => CardPlanReader.Read(f, File.ReadAllText(f), codes.Book, [])!).ToList();
            var (from, until) = (Oslemoor.Now.Date, Oslemoor.Now.Date.AddDays(1));
            var games = store.Games.AsNoTracking().Where(g => g.Start >= from && g.Start < until).OrderBy(g => g.Key).ToList();
            var (said, printed, sheets, bytes) = (new Stopwatch(), new Stopwatch(), 0, 0L);
            foreach (var game in games)
            {
                said.Start();
                var about = CardBook.Of(store, codes, game, CardReader.All);
                var cards = plans.Select(p => CardMaker.Of(p, about, codes, []) ?? throw new InvalidOperationException($"{game.Key}, {p.Name}")).ToList();
                said.Stop();
                printed.Start();
                foreach (var card in cards) bytes += CardPdf.Of(card, Leaf.Usual(card.Kind)).Length;
                printed.Stop();
                sheets += cards.Count;
            }
            Console.WriteLine($"cards: {games.Count} games of a Saturday x {plans.Count} cards: {sheets / (said.Elapsed + printed.Elapsed).TotalSeconds:F0} sheets a second in all, drawn from the store and said {sheets / said.Elapsed.TotalSeconds:F0}, printed {sheets / printed.Elapsed.TotalSeconds:F0}; {bytes / 1e6:F1} MB");
        }
        finally
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }
}
