namespace Umpirage.Store;

/// <summary>Moments cut to the second, as they are kept and written.</summary>
public static class WholeSecond
{
    /// <summary>In UTC.</summary>
    internal static DateTime Now => Of(DateTime.UtcNow);

    public static DateTime Of(DateTime at) => new(at.Ticks - at.Ticks % TimeSpan.TicksPerSecond, at.Kind);
}
