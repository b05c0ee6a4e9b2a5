using Umpirage.District.Gear;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Cards;

/// <summary>Bats: the mark that is asked for, and what a wrong one costs by when it is found.</summary>
internal static class GearParts
{
    public static IEnumerable<CardPart> Mark(Making m)
    {
        if (m.Sheet("bat") is not { } bat) yield break;
        yield return bat.Word("mark asked") == "yes" ? new CardPart.Key("The bat carries the mark", BatMarks.Asked(m.Code.Code)) : new CardPart.Key("The bat", $"{BatMarks.Asked(m.Code.Code)}; no mark is asked for");
        List<string> refused = [];
        foreach (var shown in (string[])["current mark beside an old one", "current mark but struck from the list", "old mark only", "mark of another body only", "no mark", "no mark, one piece of wood"])
            if (bat.Ask("mark on the bat", ("bat condition", "sound", 0), ("marks shown", shown, 0)).Value == "refused") refused.Add(shown);
        if (refused.Count > 0) yield return new CardPart.Line($"Does not carry it: {string.Join("; ", refused)}.");
    }

    public static IEnumerable<CardPart> BatFound(Making m)
    {
        if (m.Sheet("bat") is not { } bat) yield break;
        var times = m.Codes.Book.Sheet("bat")!.Facts.First(f => f.Name == "found").Values;
        var rows = new List<List<string>>();
        foreach (var time in times)
        {
            List<string> costs = [Cost(bat, time, ("bat condition", "sound"), ("marks shown", "mark of another body only")), Cost(bat, time, ("bat condition", "damaged"), ("marks shown", "current mark")), Cost(bat, time, ("bat condition", "altered"), ("marks shown", "current mark"))];
            // times that cost the same stand in one row
            if (rows.FirstOrDefault(r => r.Skip(1).SequenceEqual(costs)) is { } same) same[0] += ", " + time;
            else rows.Add([time, .. costs]);
        }
        yield return new CardPart.Grid([new("Found", 1.5), new("Without the mark", 2), new("Damaged", 2), new("Altered", 2)], rows);
    }

    private static string Cost(AskedSheet bat, string found, (string Fact, string Value) condition, (string Fact, string Value) mark)
    {
        string Ask(string decision) => bat.Ask(decision, (condition.Fact, condition.Value, 0), (mark.Fact, mark.Value, 0), ("found", found, 0)).Value;
        var costs = new List<string>();
        if (Ask("batter") is "out") costs.Add("batter out");
        if (Ask("batter's stay") is not "stays in the game" and var stay) costs.Add($"batter {stay}");
        if (Ask("head coach") is not "no penalty" and var coach) costs.Add($"head coach {coach}");
        if (Ask("runners") is not "no change" and var runners) costs.Add($"runners {runners}");
        if (Ask("defence") is not "no choice" and var choice) costs.Add($"defence {choice}");
        return costs.Count == 0 ? Ask("bat") : string.Join("; ", costs);
    }
}
