using Umpirage.District.People;

namespace Umpirage.District.Demo;

/// <summary>The people of the demonstration: 84 adult and 56 youth umpires, guardians, league officers, managers. Mail goes nowhere (.example), phones are of the range kept for fiction.</summary>
internal sealed class Folk(Plan plan, Dice dice)
{
    public const int Adults = 84, Youths = 56, NewYouths = 7, FirstYear = 31, Trainers = 12, Chiefs = 5, Lapsing = 22;

    /// <summary>How many offer one and two games a week; the other fourteen offer three: 238 in all.</summary>
    private const int OfferOne = 56, OfferTwo = 70;

    public List<Person> People { get; } = [];
    public List<RoleHeld> Roles { get; } = [];
    public List<Guardianship> Guardianships { get; } = [];
    public List<Official> Officials { get; } = [];
    public List<Clearance> Clearances { get; } = [];
    public List<Certificate> Certificates { get; } = [];
    public List<Availability> Hours { get; } = [];

    private readonly HashSet<string> names = [];
    private readonly Dictionary<string, int> keenness = [];
    private int phone;

    /// <summary>"SB 12U" as part of a key: SB12U.</summary>
    public static string Slug(string text) => new([.. text.Where(char.IsAsciiLetterOrDigit)]);

    public void Fill(IReadOnlyList<Team> teams)
    {
        Role(Add("chief", AgeBand.Adult, null), District.People.Role.Chief);
        Role(Add("assigner", AgeBand.Adult, null), District.People.Role.Assigner);
        foreach (var league in plan.Leagues)
        {
            Role(Add($"president-{league.Key}", AgeBand.Adult, league.Key), District.People.Role.President, league.Key);
            Role(Add($"safety-{league.Key}", AgeBand.Adult, league.Key), District.People.Role.SafetyOfficer, league.Key);
        }
        for (var i = 1; i <= 7; i++) Role(Add($"committee-{i}", AgeBand.Adult, plan.Leagues[i].Key), District.People.Role.Committee);
        for (var i = 1; i <= 20; i++) Role(Add($"coordinator-{i:00}", AgeBand.Adult, dice.Of(plan.Leagues).Key), District.People.Role.Coordinator);
        foreach (var team in teams) Role(Add($"manager-{team.Key.ToLowerInvariant()}", AgeBand.Adult, team.League), District.People.Role.Manager, team: team.Key);
        var lapsing = dice.Shuffled(Enumerable.Range(0, Adults)).Take(Lapsing).ToHashSet();
        for (var i = 0; i < Adults; i++) Adult(i, lapsing.Contains(i));
        for (var i = 0; i < Youths; i++) Youth(i);
        Offer();
    }

    /// <summary>
    /// Dealt by keenness. One game a week offer those, too, who work softball only, the newest who may have no more than a youth base, and those whose
    /// check has run out: together they offer in vain what the people of the stories offer besides, so that 238 remain for the open week.
    /// </summary>
    private void Offer()
    {
        var expired = Clearances.Where(c => c.Until < DateOnly.FromDateTime(Oslemoor.Now)).Select(c => c.Person).ToHashSet();
        var young = People.Where(p => p.Band == AgeBand.From13To15).Select(p => p.Key).ToHashSet();
        var games = Certificates.ToLookup(c => c.Person, c => c.Game);
        bool Little(Official o) => expired.Contains(o.Person) || (o.Grade == Grade.Trainee && young.Contains(o.Person)) || !games[o.Person].Contains("baseball");
        var dealt = Officials.OrderBy(o => Little(o) ? 0 : 1).ThenBy(o => keenness[o.Person]).Select((o, i) => (o.Person, Games: i < OfferOne ? 1 : i < OfferOne + OfferTwo ? 2 : 3)).ToDictionary(x => x.Person, x => x.Games);
        for (var i = 0; i < Officials.Count; i++) Officials[i] = Officials[i] with { GamesAWeek = dealt[Officials[i].Person] };
    }

    private void Adult(int i, bool lapses)
    {
        var grade = i < Chiefs ? Grade.CrewChief : i < Adults - FirstYear / 2 ? Grade.Plate : Grade.Trainee;
        var person = Add($"umpire-{i + 1:000}", i is >= 20 and < 26 ? AgeBand.Over70 : AgeBand.Adult, dice.Of(plan.Leagues).Key);
        Role(person, District.People.Role.Umpire);
        if (i < Trainers) Role(person, District.People.Role.Trainer);
        Works(person, grade, grade == Grade.Trainee ? 2026 : dice.Between(1990, 2025), lapses);
    }

    private void Youth(int i)
    {
        var older = i % 3 == 0;
        var person = Add($"youth-{i + 1:00}", older ? AgeBand.From16To17 : AgeBand.From13To15, dice.Of(plan.Leagues).Key, new DateOnly(older ? 2027 : 2029, 1, 1).AddDays(dice.Below(700) - (older ? 180 : 0)));
        var guardian = Add($"guardian-{i + 1:00}", AgeBand.Adult, person.League);
        Role(guardian, District.People.Role.Guardian);
        Guardianships.Add(new(person.Key, guardian.Key));
        Role(person, District.People.Role.YouthUmpire);
        Works(person, i < NewYouths ? Grade.Trainee : older && i < 20 ? Grade.Base : Grade.Plate, i < FirstYear - FirstYear / 2 ? 2026 : 2025, false);
    }

    private void Works(Person person, Grade grade, int since, bool lapses)
    {
        keenness[person.Key] = dice.Below(10);
        Officials.Add(new(person.Key, grade, 0, since));
        var from = new DateOnly(2026, 2, 1).AddDays(dice.Below(40));
        var until = lapses ? new DateOnly(2026, 5, 1).AddDays(dice.Below(50)) : from.AddYears(1).AddDays(-1);
        if (!person.IsMinor) Clearances.Add(new(person.Key, "background check", from, until, "safety officer"));
        Clearances.Add(new(person.Key, "abuse-awareness course", from, from.AddYears(1).AddDays(-1), "safety officer"));
        Clearances.Add(new(person.Key, "concussion course", from, from.AddYears(2).AddDays(-1), "safety officer"));
        foreach (var game in new[] { "softball", "baseball" })
        {
            if (dice.In(5) && game == "baseball") continue;
            var divisions = plan.Divisions.Where(d => d.Game == game && d.Division.Crew > 0).ToList();
            var top = divisions[person.IsMinor ? Math.Max(dice.Below(2), person.Band == AgeBand.From16To17 ? 1 : 0) : grade == Grade.Trainee ? dice.Between(1, 2) : grade == Grade.CrewChief ? divisions.Count - 1 : dice.Between(1, divisions.Count - 1)];
            Certificates.Add(new(person.Key, game, top.Division.Key, Position.Base, new(2026, 3, 15), new(2027, 3, 14)));
            // the young work the plate of the youngest only
            if (grade >= Grade.Plate) Certificates.Add(new(person.Key, game, (person.IsMinor ? divisions[0] : top).Division.Key, Position.Plate, new(2026, 3, 15), new(2027, 3, 14)));
        }
        foreach (var day in dice.Shuffled(Enum.GetValues<DayOfWeek>().Where(d => d is not (DayOfWeek.Saturday or DayOfWeek.Sunday))).Take(3)) Hours.Add(new(person.Key, day, new(17, 15), new(22, 30)));
        if (!dice.In(4)) Hours.Add(new(person.Key, DayOfWeek.Saturday, new(8, 0), new(dice.In(3) ? 14 : 20, 0)));
        if (dice.In(3)) Hours.Add(new(person.Key, DayOfWeek.Sunday, new(12, 0), new(19, 0)));
    }

    private Person Add(string key, AgeBand band, string? league, DateOnly? adultOn = null)
    {
        string given, family;
        do (given, family) = (dice.Of(plan.Given), dice.Of(plan.Family)); while (!names.Add(given + " " + family));
        phone++;
        var adult = !band.IsMinor();
        var person = Person.Of(key, given, family, band, adultOn, league,
            adult ? $"{200 + phone / 100} 555 {100 + phone % 100:0000}" : null, adult ? $"{given}.{family}@oslemoor.example".ToLowerInvariant() : null, [])!;
        People.Add(person);
        return person;
    }

    private void Role(Person person, Role role, string league = "", string team = "") => Roles.Add(new(person.Key, role, league, team));
}
