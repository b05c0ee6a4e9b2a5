using Umpirage.Rules.Ground;

namespace Umpirage.District.Cards;

/// <summary>What may be protested under this code, told at once and in time.</summary>
internal static class ProtestParts
{
    public static IEnumerable<CardPart> Grounds(Making m)
    {
        if (m.Sheet("protest") is not { } protest) yield break;
        var matters = m.Codes.Book.Sheet("protest")!.Facts.First(f => f.Name == "matter").Values;
        string Ask(string matter, string decision) => protest.Ask(decision, ("matter", matter, 0), ("made by", "head coach", 0), ("adopted", "yes", 0)).Value;
        foreach (var matter in matters)
            yield return Ask(matter, "protest") == "received"
                ? new CardPart.Line($"{Words.Upper(matter)}: may be protested; {Ask(matter, "how handled")}.", $"If upheld: {Ask(matter, "if upheld")}.", Strong: true)
                : new CardPart.Line($"{Words.Upper(matter)}: may not be protested.", Strong: true);
        List<string> late = [.. m.Codes.Book.Sheet("protest")!.Facts.First(f => f.Name == "since").Values.Where(s => protest.Ask("window", ("matter", matters[0], 0), ("since", s, 0)).Value == "closed")];
        if (late.Count > 0) yield return new CardPart.Line($"Too late for a rule wrongly applied after: {Words.Or(late)}.");
        List<string> who = [.. m.Codes.Book.Sheet("protest")!.Facts.First(f => f.Name == "made by").Values.Where(w => protest.Ask("who", ("matter", matters[0], 0), ("made by", w, 0)).Value == "may protest")];
        yield return new CardPart.Line($"Who tells the plate umpire: {Words.Or(who)}.");
    }
}
