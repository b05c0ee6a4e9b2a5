namespace Umpirage.District.Calendar;

/// <summary>A time on a diamond at which a game could begin.</summary>
public readonly record struct Slot(string Diamond, DateTime Start)
{
    public DateOnly Day => DateOnly.FromDateTime(Start);
}
