using System.Collections.Concurrent;
using Umpirage.District.Calendar;
using Umpirage.District.Cards;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Tests.Carried;

/// <summary>The cards of the demonstration's games, made as the verb makes them.</summary>
internal static class Deck
{
    public static CardCodes Codes { get; } = new(Shelf.Codes);

    public static IReadOnlyList<CardPlan> Plans { get; } =
        [.. Shelf.Files(Folder.Of("codes", "cards"), "*.card").Select(f => CardPlanReader.Read(f, File.ReadAllText(f), Shelf.Codes, []) ?? throw new InvalidDataException(f))];

    /// <summary>Games of the stories, and the first of the Saturday in each umpired division.</summary>
    public static IReadOnlyList<string> Games => Lists.Value;

    private static readonly Lazy<Store.OwnStore> Own = new(() =>
    {
        var own = Store.OwnStore.Oslemoor(Store.Kept.Sqlite);
        AppDomain.CurrentDomain.ProcessExit += (_, _) => own.Dispose();
        return own;
    });

    private static readonly Lazy<IReadOnlyList<string>> Lists = new(() =>
    {
        using var store = Open();
        var day = new DateTime(2026, 5, 16);
        var saturday = store.Games.Where(g => g.Start >= day && g.Start < day.AddDays(1)).OrderBy(g => g.Key).ToList();
        return [.. ((string[])["S-F1-SAT", "S-F2", "S-F4", "S-F6", "S-F9", "W06-BB910-10", "W06-BB910-12"]).Concat(saturday.GroupBy(g => g.Division).Select(g => g.First().Key)).Distinct()];
    });

    public static DistrictStore Open() => Own.Value.Open();

    public static CardGame Game(string key, CardReader? reader = null)
    {
        using var store = Open();
        return CardBook.Of(store, Codes, store.Games.Find(key)!, reader ?? CardReader.All);
    }

    private static readonly ConcurrentDictionary<string, IReadOnlyList<Card>> Made = [];

    public static IReadOnlyList<Card> Of(string game) => Made.GetOrAdd(game, key =>
    {
        var about = Game(key);
        return [.. Plans.Select(p => Make(p, about))];
    });

    public static Card Of(string game, string card) => Of(game).Single(c => c.Name == card);

    public static Card Make(CardPlan plan, CardGame game)
    {
        var findings = new List<Finding>();
        return CardMaker.Of(plan, game, Codes, findings) ?? throw new InvalidDataException(string.Join('\n', findings));
    }

    /// <summary>Everything that is said on a card, in order.</summary>
    public static IEnumerable<string> Words(Card card) => card.Parts.SelectMany(p => p switch
    {
        CardPart.Heading h => [h.Words], CardPart.Line l => [l.Words, l.Beside], CardPart.Key k => [k.Label, k.Words], CardPart.Grid g => [.. g.Columns.Select(c => c.Head), .. g.Rows.SelectMany(r => r)],
        CardPart.Tick t => t.Words, CardPart.Write w => [w.Words], CardPart.Note n => [n.Words], _ => (IEnumerable<string>)[],
    });
}
