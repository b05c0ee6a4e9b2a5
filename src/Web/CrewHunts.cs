using Umpirage.Solve.Crews;

namespace Umpirage.Web;

/// <summary>One search for crews at a time, and the last that ended. They are gone when the desk closes; nothing hangs on them.</summary>
public sealed class CrewHunts : IDisposable
{
    /// <summary>How long a search may take, in seconds.</summary>
    public static IReadOnlyList<(double Seconds, string Words)> Times { get; } = [(15, "15 seconds"), (60, "1 minute"), (300, "5 minutes")];

    public static string Written(double seconds) => seconds.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private readonly Lock one = new();

    public CrewHunt? Last { get; private set; }

    /// <summary>Begins a search, unless one runs: then that one is given.</summary>
    public CrewHunt Begin(DateOnly monday, Func<CrewTask> task)
    {
        lock (one) return Last is { Runs: true } running ? running : Last = new(monday, task());
    }

    public CrewHunt? Find(string key) => Last is { } last && last.Key == key ? last : null;

    /// <summary>What was taken is not offered again.</summary>
    public void Forget(CrewHunt hunt)
    {
        lock (one) if (Last == hunt) Last = null;
    }

    public void Dispose() => Last?.Stop();
}
