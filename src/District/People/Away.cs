namespace Umpirage.District.People;

/// <summary>Days on which somebody cannot umpire whatever the weekly hours say, the first and the last included. Why is nobody's matter and is not kept.</summary>
public sealed record Away(string Person, DateOnly From, DateOnly Until)
{
    public bool On(DateOnly day) => From <= day && day <= Until;
}
