using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Diamonds;

namespace Umpirage.Web;

/// <summary>What of a diamond somebody wants to see: for which division, in which lengths, and the sun of which day, hours and direction. All stands in the address.</summary>
public sealed record DiamondAsked([FromQuery] string? Division, [FromQuery] string? Lengths, [FromQuery] string? On, [FromQuery] string? From, [FromQuery] string? Until, [FromQuery] string? Looks)
{
    public bool Metres => Lengths == "m";

    public Func<double, string> Told => Tape.Telling(Metres);

    /// <summary>The same question as the end of an address.</summary>
    public string Query => QueryString.Create(new Dictionary<string, string?> { ["division"] = Division, ["lengths"] = Lengths, ["on"] = On, ["from"] = From, ["until"] = Until, ["looks"] = Looks }.Where(p => !string.IsNullOrEmpty(p.Value))).ToString();
}
