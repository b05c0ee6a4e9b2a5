using System.Collections.Concurrent;
using Umpirage.District.Calendar;

namespace Umpirage.Web;

/// <summary>A plan that was shown and not kept: what is kept later is the very plan that somebody looked at.</summary>
public sealed record ShownPlan(string Key, Replan Plan, IReadOnlyList<Blackout> Closed, DateTime At);

/// <summary>The plans shown lately. They are gone when the desk closes; nothing hangs on them.</summary>
public sealed class Plans
{
    private const int Most = 20;

    private readonly ConcurrentDictionary<string, ShownPlan> shown = [];

    public ShownPlan Add(Replan plan, IReadOnlyList<Blackout> closed)
    {
        foreach (var old in shown.Values.OrderByDescending(s => s.At).Skip(Most - 1)) shown.TryRemove(old.Key, out _);
        var one = new ShownPlan(Guid.NewGuid().ToString("N"), plan, closed, DateTime.UtcNow);
        return shown[one.Key] = one;
    }

    public ShownPlan? Find(string key) => shown.GetValueOrDefault(key);
}
