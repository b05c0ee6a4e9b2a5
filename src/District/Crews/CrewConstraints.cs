using Umpirage.District.Crews.Constraints;

namespace Umpirage.District.Crews;

/// <summary>Everything that crews have to keep, safety first.</summary>
public static class CrewConstraints
{
    public static IReadOnlyList<CrewConstraint> All { get; } =
    [
        new Cleared(), new GuardianApproves(), new OlderThanThePlayers(), new AdultCoordinator(), new NeverOneAdult(), new HomeByThen(), new GamesADay(), new PlatesADay(),
        new OneGameAtATime(), new BreakBetween(), new TimeToTravel(), new Certified(), new GradeEnough(), new AvailableThen(), new NoInterest(), new KeptApart(), new BesideTheMentor(), new YouthPlaceForYouth(),
        new Neutral(), new PlateThenBase(), new AsOffered(),
    ];

    public static CrewConstraint Named(string name) => All.First(c => c.Name == name);
}
