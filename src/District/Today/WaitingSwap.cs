using Umpirage.District.Calendar;

namespace Umpirage.District.Today;

/// <summary>A swap that waits for somebody's word, with its games.</summary>
public sealed record WaitingSwap(AskedSwap Swap, ScheduledGame Game, ScheduledGame? Other);
