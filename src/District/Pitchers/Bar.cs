using Umpirage.Rules.Ground;

namespace Umpirage.District.Pitchers;

/// <summary>A rule that speaks about a pitcher's day: the sheet, the rule, what was counted, and the source.</summary>
public sealed record Bar(string Sheet, string Rule, string Title, string? Reason, string Said, Citation Source)
{
    public string InWords => $"{Title}: {Said} ({Sheet} {Rule}; {Source})";
}
