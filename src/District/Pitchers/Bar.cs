using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Pitchers;

/// <summary>A rule that speaks about a pitcher's day: the sheet, the rule, what was counted, and the source.</summary>
public sealed record Bar(string Sheet, string Rule, string Title, string? Reason, string Said, Citation Source)
{
    /// <summary>The rule that decided on a line of a sheet, what it was held against, and where it stands.</summary>
    internal static Bar Of(AskedSheet sheet, Cell line, string decision, string said)
    {
        var by = sheet.By(line, decision);
        var (title, source) = sheet.Told(by);
        return new(sheet.Name, by.Id, title, by.Clause.Reason, said, source);
    }

    public string InWords => $"{Title}: {Said} ({Sheet} {Rule}; {Source})";
}
