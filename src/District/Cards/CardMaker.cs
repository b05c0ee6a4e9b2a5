using System.Globalization;
using Umpirage.District.Gear;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Cards;

/// <summary>A card being made: the game, its code, and where faults go.</summary>
internal sealed record Making(CardPlan Plan, CardGame Game, CardCodes Codes, CardCode Code, List<Finding> Findings)
{
    public DateOnly Day => Game.Game.Day;
    public AskedSheet? Sheet(string name) => Code.Sheet(name, Findings);
}

/// <summary>Makes the cards of a game from their plans.</summary>
public static class CardMaker
{
    /// <summary>Null, with every reason, when the code or a sheet that the card asks cannot be used.</summary>
    public static Card? Of(CardPlan plan, CardGame game, CardCodes codes, List<Finding> findings)
    {
        var before = findings.Count;
        if (codes.Of(game.Address, game.Game.Day, findings) is not { } code) return null;
        var making = new Making(plan, game, codes, code, findings);
        var parts = new List<CardPart>();
        foreach (var item in plan.Items)
            foreach (var part in Parts(making, item))
                if (item is CardItem.Value { Joined: true } && part is CardPart.Line more && parts is [.., CardPart.Line above]) parts[^1] = above with { Words = $"{above.Words} {more.Words}" };
                else parts.Add(part);
        // a heading under which nothing stands says nothing
        parts = [.. parts.Where((p, i) => p is not CardPart.Heading || (i + 1 < parts.Count && parts[i + 1] is not (CardPart.Heading or CardPart.OtherSide)))];
        return findings.Count > before ? null : new(plan.Name, plan.Title, Under(game), plan.Kind, code.Stamp, parts);
    }

    private static string Under(CardGame game) =>
        $"{game.Visitor.Name} at {game.Home.Name}, {game.Game.Start.ToString("ddd d MMM yyyy H:mm", CultureInfo.InvariantCulture)}, {game.Diamond.Name}, {game.Division.Key}";

    private static IEnumerable<CardPart> Parts(Making making, CardItem item) => item switch
    {
        CardItem.Fixed f => [f.Part],
        CardItem.Value v => v.Spoken.Say(making.Code.Code) is { } words ? [new CardPart.Line(words)] : [],
        CardItem.Made m => Makers.All[m.Name](making),
        CardItem.Before b => [new CardPart.Line($"{ClockParts.At(making.Game.Game.Start.AddMinutes(-b.Minutes))} {b.Words}", Strong: true)],
        CardItem.Faults f => FaultsOf(making, f),
        _ => throw new NotSupportedException(item.GetType().Name),
    };

    /// <summary>The values of a fact that do not let a piece in, all else being sound; nothing is said when every one does.</summary>
    private static IEnumerable<CardPart> FaultsOf(Making making, CardItem.Faults asked)
    {
        var kind = GearKind.All.First(k => k.Sheet == asked.Sheet);
        if (making.Sheet(asked.Sheet) is not { } sheet) yield break;
        var sound = kind.Sound.Select(s => GearKind.Apart(s, sheet.Word)).ToList();
        var wrong = new List<string>();
        foreach (var value in making.Codes.Book.Sheet(asked.Sheet)!.Facts.First(f => f.Name == asked.Fact).Values)
            if (sound.All(s => s != (asked.Fact, value)) && kind.Passes.Select(p => GearKind.Apart(p, sheet.Word)).Any(p => sheet.Ask(p.Name, [.. sound.Where(s => s.Name != asked.Fact).Select(s => (s.Name, (string?)s.Value, 0d)), (asked.Fact, value, 0d)]).Value != p.Value)) wrong.Add(value);
        if (wrong.Count > 0) yield return new CardPart.Line(asked.Words.Replace("{list}", string.Join("; ", wrong), StringComparison.Ordinal));
    }
}
