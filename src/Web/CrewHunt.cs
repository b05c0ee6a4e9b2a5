using System.Collections.Immutable;
using Umpirage.District.Crews;
using Umpirage.Solve.Crews;

namespace Umpirage.Web;

/// <summary>A search for a week's crews that runs, or ran. It writes nothing: what it found stands here until somebody takes it.</summary>
public sealed class CrewHunt
{
    private readonly CancellationTokenSource stop = new();
    private volatile ImmutableList<Stage> reached = [];
    private volatile CrewResult? result;
    private volatile string? fault;
    private readonly Lazy<Forecast> forecast;

    internal CrewHunt(DateOnly monday, CrewTask task)
    {
        (Monday, Task) = (monday, task);
        forecast = new(() => Forecast.Of(task.Plan, monday));
        _ = System.Threading.Tasks.Task.Factory.StartNew(Find, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    public string Key { get; } = Guid.NewGuid().ToString("N");
    public DateOnly Monday { get; }
    public CrewTask Task { get; }
    public DateTime BeganAt { get; } = DateTime.UtcNow;

    /// <summary>Supply against demand of the week, worked out when it is first asked for.</summary>
    public Forecast Forecast => forecast.Value;

    /// <summary>The priorities settled so far, in their order.</summary>
    public IReadOnlyList<Stage> Reached => reached;

    /// <summary>Somebody asked it to end with the best it has.</summary>
    public bool Stopping => stop.IsCancellationRequested;

    /// <summary>Null while it runs, and when it failed.</summary>
    public CrewResult? Result => result;
    public string? Fault => fault;
    public bool Runs => result is null && fault is null;

    public void Stop() => stop.Cancel();

    private void Find()
    {
        try { result = CrewSearch.Find(Task, stop.Token, stage => reached = reached.Add(stage)); }
        // whatever breaks a search breaks nothing else: the crews on record are not touched
        catch (Exception broken) when (broken is not OutOfMemoryException) { fault = broken.Message; }
    }
}
