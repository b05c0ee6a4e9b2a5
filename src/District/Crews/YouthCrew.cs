using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Crews;

/// <summary>One step of the ladder: what is done, how, and where it comes from.</summary>
public sealed record YouthStep(string Step, string? How, Citation Source);

/// <summary>What a code says of a game with a minor in its crew: the coordinator's steps in their order, what happens without one, and what follows with its hours.</summary>
/// <param name="Ladder">When somebody shouts at the crew, with the coordinator on site: the first step, and each next one.</param>
/// <param name="Without">When no coordinator is on site: what becomes of play.</param>
/// <param name="ReportHours">From the end of the game until the report is due.</param>
/// <param name="WelfareHours">From the end of the game until somebody has asked how the minor is.</param>
/// <param name="Caution">A threat or contact.</param>
public sealed record YouthCrew(
    string DealtWithBy, IReadOnlyList<YouthStep> Ladder, YouthStep Without, YouthStep Caution, string CrewLeaves, string WhoMayEnd, bool ThenBesideAMentor,
    double ReportHours, Citation ReportSource, double WelfareHours, Citation WelfareSource)
{
    private static readonly string[] Taken = ["none", "head coach warned", "person told to leave"];

    internal static YouthCrew Of(AskedSheet sheet)
    {
        YouthStep Step(string coordinator, string trouble, string taken) => Told(sheet, "step now", coordinator, trouble, taken);
        const string Shouting = "shouting at the crew", Threat = "threat or contact";
        return new(
            Told(sheet, "who deals with it", "on site", Shouting, Taken[0]).Step, [.. Taken.Select(t => Step("on site", Shouting, t))],
            Told(sheet, "play", "not on site", "none", Taken[0]), Step("on site", Threat, Taken[0]),
            Told(sheet, "crew leaves", "on site", Shouting, Taken[0]).Step, sheet.Word("who may suspend or forfeit"), Told(sheet, "next game of the minor", "on site", Shouting, Taken[0]).Step == "beside a mentor",
            sheet.Exactly("report due within") ?? 0, sheet.Source("report due within"), sheet.Exactly("welfare check within") ?? 0, sheet.Source("welfare check within"));
    }

    private static YouthStep Told(AskedSheet sheet, string decision, string coordinator, string trouble, string taken)
    {
        var (value, by) = sheet.Ask(decision, ("crew", "with a minor", 0), ("coordinator", coordinator, 0), ("trouble", trouble, 0), ("step taken", taken, 0));
        return new(value, by.Clause.Do, sheet.Told(by).Source);
    }
}
