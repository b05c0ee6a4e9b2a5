using System.Collections.Concurrent;

namespace Umpirage.Rules.Ground;

/// <summary>
/// What was worked out, by what was asked: once for each, however many ask at a time, with why not where it could not be. When there is more of it than
/// is usual, all of it is forgotten, since the same few are asked again and again.
/// </summary>
/// <param name="work">Works it out; null, with the reasons added, when that cannot be.</param>
/// <param name="most">How much may be kept.</param>
public sealed class WorkedOut<TAsked, TWhat>(Func<TAsked, List<Finding>, TWhat?> work, int most) where TAsked : notnull where TWhat : class
{
    private readonly ConcurrentDictionary<TAsked, Lazy<(TWhat? What, IReadOnlyList<Finding> Findings)>> known = [];

    public TWhat? Of(TAsked asked, List<Finding>? findings = null)
    {
        if (known.Count > most) known.Clear();
        var (what, found) = known.GetOrAdd(asked, a => new(() =>
        {
            var told = new List<Finding>();
            return (work(a, told), told);
        })).Value;
        findings?.AddRange(found);
        return what;
    }
}
