using Umpirage.District.Cards;
using Umpirage.Paper;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Cli.Verbs;

/// <summary>The cards and sheets that people carry to a game, as PDF.</summary>
internal static class CardsVerb
{
    private const string Form = "write: ./umpirage cards --game GAME --out FOLDER [--card A6|3x5] [--sheet letter|A4] [--usual CODE]";

    public static int Run(Request request)
    {
        var options = new Options(request, ["--game", "--out", "--card", "--sheet", "--usual"]);
        var (game, folder, usual) = (options.Text("--game"), options.Text("--out"), options.Text("--usual"));
        var faults = options.Faults;
        if (options.Words.Count > 0) faults.Add($"cannot read '{options.Words[0]}'; {Form}");
        else if (game is null || folder is null) faults.Add(Form);
        var leaves = new[] { (LeafKind.Card, "--card"), (LeafKind.Sheet, "--sheet") }.ToDictionary(l => l.Item1, l => LeafOf(l.Item1, options.Text(l.Item2), faults));
        if (Told(faults)) return Verb.Unusable;
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        if (store.Games.Find(game) is not { } played) faults.Add($"there is no game '{game}'; {Words.Offer(game!, [.. store.Games.Select(g => g.Key).Take(2000)])}");
        else
        {
            var codes = new CardCodes(Library.Codes(request));
            var findings = new List<Finding>(codes.Book.Findings);
            var about = CardBook.Of(store, codes, played, CardReader.All);
            if (usual is not null) about = about with { Usual = [(usual, usual)] };
            List<Card?> cards = [.. Library.Cards(request, codes.Book, findings).Select(p => CardMaker.Of(p, about, codes, findings))];
            faults.AddRange(findings.Select(f => f.ToString()).Distinct());
            if (faults.Count == 0) Write(request, folder!, [.. cards.OfType<Card>()], kind => leaves[kind]!);
        }
        return Told(faults) ? Verb.Unusable : Verb.Fine;
    }

    private static void Write(Request request, string folder, IReadOnlyList<Card> cards, Func<LeafKind, Leaf> leaf)
    {
        Directory.CreateDirectory(folder);
        foreach (var card in cards) File.WriteAllBytes(Path.Combine(folder, card.Name + ".pdf"), CardPdf.Of(card, leaf(card.Kind)));
        File.WriteAllBytes(Path.Combine(folder, "all.pdf"), CardPdf.Of(cards, leaf));
        if (request.Json) Json.Write(cards.Select(c => new { name = c.Name, title = c.Title, paper = leaf(c.Kind).Name, stamp = new { address = c.Stamp.Address, edition = c.Stamp.Edition, day = c.Stamp.Day, digest = c.Stamp.Digest }, file = Path.Combine(folder, c.Name + ".pdf") }));
        else
        {
            foreach (var card in cards) Console.WriteLine($"{Path.Combine(folder, card.Name + ".pdf"),-40} {card.Title} ({leaf(card.Kind).Name})");
            Console.WriteLine($"{Path.Combine(folder, "all.pdf"),-40} all of them; {cards[0].Stamp.InWords}");
        }
    }

    private static Leaf? LeafOf(LeafKind kind, string? name, List<string> faults)
    {
        if (name is null) return Leaf.Usual(kind);
        List<string> known = [.. Leaf.All.Where(l => l.Kind == kind).Select(l => l.Name)];
        if (Leaf.All.FirstOrDefault(l => l.Kind == kind && Words.Same(l.Name, name)) is { } leaf) return leaf;
        faults.Add($"there is no paper '{name}' for a {kind.ToString().ToLowerInvariant()}; it may be {Words.Or(known)}");
        return null;
    }

    private static bool Told(List<string> faults)
    {
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        return faults.Count > 0;
    }
}
