using System.Collections.Concurrent;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Pitchers;

/// <summary>The pitching codes of a codebook, each worked out once.</summary>
public sealed class PitchingCodes(Codebook book)
{
    private readonly ConcurrentDictionary<(string Address, DateOnly Day), Lazy<(PitchingCode? Code, IReadOnlyList<Finding> Findings)>> known = [];

    public Codebook Book => book;

    /// <summary>Null, with the reasons, when the address or a sheet cannot be used.</summary>
    public PitchingCode? Of(string address, DateOnly day, List<Finding>? findings = null)
    {
        var (code, faults) = known.GetOrAdd((address, day), key => new(() =>
        {
            var found = new List<Finding>();
            return (PitchingCode.Of(book, key.Address, key.Day, found), found);
        })).Value;
        findings?.AddRange(faults);
        return code;
    }
}
