using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews;

/// <summary>A rule that says no: its title with the numbers put in, and its source.</summary>
public sealed record Barred(string Title, Citation Source);
