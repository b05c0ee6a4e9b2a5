using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Pitchers;

/// <summary>The pitching codes of a codebook, each worked out once.</summary>
public sealed class PitchingCodes(Codebook book)
{
    private const int Most = 400;

    private readonly WorkedOut<(string Address, DateOnly Day), PitchingCode> known = new((key, found) => PitchingCode.Of(book, key.Address, key.Day, found), Most);

    public Codebook Book => book;

    /// <summary>Null, with the reasons, when the address or a sheet cannot be used.</summary>
    public PitchingCode? Of(string address, DateOnly day, List<Finding>? findings = null) => known.Of((address, day), findings);
}
