namespace Umpirage.District.Crews;

/// <summary>One game of an umpire's day: of the plan, or elsewhere as the umpire said it (then without <paramref name="Seated"/>).</summary>
public sealed record DayGame(DateTime Start, DateTime End, bool IsPlate, Seated? Seated)
{
    public string InWords => Seated is { } s ? $"{s.Place} of {s.Game.Key} at {Start:HH:mm}" : $"a game elsewhere at {Start:HH:mm}";
}
