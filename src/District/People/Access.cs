namespace Umpirage.District.People;

/// <summary>What somebody may want to do at the desk.</summary>
public enum Deed
{
    ReadCodes, SeeVenues, SeeToday, SeeOwn, KeepQuestion, SeeQuestions, SeePeople, SeeContact, SeeClearances, ChangePeople, SeeCrews, SetCrews, ChangeGames, OfferHours,
    SwapPlaces, SeePitching, SeeEligibility, CountPitches, PlanSchedule, ProposeOption, PublishOption, WriteLetters, MoveData, SeeTrail, KeepAccounts, Evaluate, SeeEvaluations,
    SeeVisits, SeeForecast,
    Drill, SeeTraining, Teach, Certify,
    LookOver,
}

/// <summary>How far a permission reaches: nothing, what is one's own, one's own team, one's own league, the district.</summary>
public enum Reach { None, Self, Team, League, District }

/// <summary>Who may do what, and how far. A role that is not listed may not. Those not signed in may do what <see cref="Open"/> lists.</summary>
public static class Access
{
    public static IReadOnlySet<Deed> Open { get; } = new HashSet<Deed> { Deed.ReadCodes, Deed.SeeVenues };

    /// <summary>What everybody may do who is signed in.</summary>
    public static IReadOnlySet<Deed> SignedIn { get; } = new HashSet<Deed> { Deed.SeeToday, Deed.SeeOwn, Deed.KeepQuestion, Deed.Drill };

    private static readonly Dictionary<(Role, Deed), Reach> Table = Read(
        (Role.Chief, Reach.District, [.. Enum.GetValues<Deed>()]),
        (Role.Assigner, Reach.District, [Deed.SeePeople, Deed.SeeContact, Deed.SeeClearances, Deed.SeeCrews, Deed.SetCrews, Deed.SwapPlaces, Deed.WriteLetters, Deed.SeeVisits, Deed.SeeForecast]),
        (Role.Trainer, Reach.District, [Deed.SeePeople, Deed.SeeQuestions, Deed.WriteLetters, Deed.Evaluate, Deed.SeeVisits, Deed.SeeTraining, Deed.Teach]),
        (Role.President, Reach.League, [Deed.SeePeople, Deed.SeeCrews, Deed.ChangeGames, Deed.SeePitching, Deed.CountPitches, Deed.ProposeOption, Deed.SeeForecast]),
        (Role.President, Reach.District, [Deed.SeeEligibility, Deed.LookOver]),
        (Role.SafetyOfficer, Reach.League, [Deed.SeePeople, Deed.SeeClearances]),
        (Role.SafetyOfficer, Reach.District, [Deed.LookOver]),
        (Role.Manager, Reach.Team, [Deed.SeePitching, Deed.CountPitches]),
        (Role.Manager, Reach.District, [Deed.SeeEligibility]),
        (Role.Scorekeeper, Reach.Team, [Deed.CountPitches]),
        (Role.Scorekeeper, Reach.District, [Deed.SeeEligibility]),
        (Role.Coordinator, Reach.District, [Deed.SeeEligibility, Deed.LookOver]),
        (Role.Umpire, Reach.Self, [Deed.SeeCrews, Deed.OfferHours, Deed.SwapPlaces, Deed.SeeTraining]),
        (Role.Umpire, Reach.District, [Deed.SeeEligibility, Deed.LookOver]),
        (Role.YouthUmpire, Reach.Self, [Deed.SeeCrews, Deed.SwapPlaces, Deed.SeeTraining]),
        (Role.YouthUmpire, Reach.District, [Deed.SeeEligibility, Deed.LookOver]),
        (Role.Guardian, Reach.Self, [Deed.SeeCrews, Deed.OfferHours, Deed.SwapPlaces, Deed.SeeTraining]));

    private static Dictionary<(Role, Deed), Reach> Read(params (Role Role, Reach Reach, Deed[] Deeds)[] lines) =>
        lines.SelectMany(l => l.Deeds.Select(d => (l.Role, d, l.Reach))).ToDictionary(x => (x.Role, x.d), x => x.Reach);

    public static Reach Of(Role role, Deed deed) => Table.GetValueOrDefault((role, deed));
}
