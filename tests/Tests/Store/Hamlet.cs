using Umpirage.District.Calendar;
using Umpirage.District.Clinic;
using Umpirage.District.Diamonds;
using Umpirage.District.Gear;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;
using Umpirage.District.Visits;

namespace Umpirage.Tests.Store;

/// <summary>A few records of every kind, for tests that spoil files or write often.</summary>
internal static class Hamlet
{
    public static string LayerText { get; } = File.ReadAllText(Folder.Of("codes", "layers", "tarnholt.layer"));

    public static Person Adult(string key, string given, string family = "Lark", string? league = "tarnholt", AgeBand band = AgeBand.Adult,
        string? mail = "post@tarnholt.example", string? phone = "200 555 0100") =>
        Person.Of(key, given, family, band, null, league, phone, mail, []) ?? throw new InvalidOperationException(key);

    public static Person Minor(string key, string given, string family = "Lark", AgeBand band = AgeBand.From13To15) =>
        Person.Of(key, given, family, band, new(2029, 3, 1), "tarnholt", null, null, []) ?? throw new InvalidOperationException(key);

    public static IEnumerable<object> Records() =>
    [
        new DistrictFacts(DistrictFacts.Only, "Hamlet District", "America/Chicago", 41.4, -88.1),
        new League("tarnholt", "Tarnholt League"), new League("wrenfall", "Wrenfall League"),
        new Division("SB 10U", "softball/10U", 1, true), new Division("SB 12U", "softball/12U", 2, false),
        new Park("mill", "Tarnholt Mill", 41.4392, -88.2454), new Park("common", "Wrenfall Common", 41.2851, -88.0975),
        new Diamond("mill-1", "mill", "Tarnholt Mill 1", 60, true, 67.5), new Diamond("common-1", "common", "Wrenfall Common 1", 60, false),
        new Team("TAR-1", "Tarnholt Owls", "tarnholt", "SB 12U"), new Team("TAR-2", "Tarnholt Otters", "tarnholt", "SB 12U"),
        new Team("WRE-1", "Wrenfall Terns", "wrenfall", "SB 12U"), new Team("WRE-2", "Wrenfall Larks", "wrenfall", "SB 10U"),
        Adult("chief", "Ada"), Adult("umpire-1", "Ben"), Adult("umpire-2", "Cleo", band: AgeBand.Over70), Adult("mother", "Dora"), Adult("other", "Edda"),
        Minor("youth-1", "Finn"), Minor("youth-2", "Gwen"),
        new RoleHeld("chief", Role.Chief, "", ""), new RoleHeld("umpire-1", Role.Umpire, "", ""), new RoleHeld("umpire-2", Role.Umpire, "", ""),
        new RoleHeld("mother", Role.Guardian, "", ""),
        new RoleHeld("other", Role.Manager, "", "TAR-1"), new RoleHeld("other", Role.President, "tarnholt", ""), new RoleHeld("youth-1", Role.YouthUmpire, "", ""),
        new Guardianship("youth-1", "mother"), new Guardianship("youth-2", "mother"), new Guardianship("youth-2", "other"),
        new Official("umpire-1", Grade.Plate, 2, 2019), new Official("umpire-2", Grade.CrewChief, 1.5, 1990), new Official("youth-1", Grade.Trainee, 1, 2026),
        new Clearance("umpire-1", "background check", new(2026, 2, 1), new(2027, 1, 31), "safety officer"),
        new Clearance("umpire-2", "concussion course", new(2026, 2, 1), new(2028, 1, 31), "safety officer"),
        // the same person, game, division and day: only the position tells them apart
        new Certificate("umpire-1", "softball", "SB 12U", Position.Base, new(2026, 3, 15), new(2027, 3, 14)),
        new Certificate("umpire-1", "softball", "SB 12U", Position.Plate, new(2026, 3, 15), new(2027, 3, 14)),
        new Availability("umpire-1", DayOfWeek.Tuesday, new(17, 15), new(22, 30)), new Availability("umpire-2", DayOfWeek.Saturday, new(8, 0), new(14, 0)), new Away("umpire-1", new(2026, 5, 30), new(2026, 6, 7)), new Away("umpire-1", new(2026, 7, 4), new(2026, 7, 4)),
        new ScheduledGame("G-1", "SB 12U", "TAR-1", "WRE-1", "mill-1", new(2026, 5, 16, 9, 0, 0), GameStatus.Planned, 0),
        new ScheduledGame("G-2", "SB 12U", "WRE-1", "TAR-2", "common-1", new(2026, 5, 16, 11, 30, 0), GameStatus.Moved, 3, "G-3"),
        new ScheduledGame("G-3", "SB 12U", "TAR-2", "TAR-1", "mill-1", new(2026, 5, 12, 17, 45, 0), GameStatus.Played, 0),
        new LastSurvey("mill-1", new(2026, 4, 11), "Survey: Mill 1\nhome-first 60 ft\n"),
        new TakenOut("t-1", new(2026, 5, 12, 23, 10, 0, DateTimeKind.Utc), "G-3", "Owls", "softball/12U", "bat A", "a dent", "bat C1c", null),
        new TakenOut("t-2", new(2026, 5, 12, 23, 11, 0, DateTimeKind.Utc), null, "", "softball/12U", "helmet 4", "cracked", "batting helmet H1a", new(2026, 5, 13)),
        new Blackout(BlackoutOf.Diamond, "mill-1", new(2026, 5, 25), new(2026, 5, 26), "field work"),
        new Approval("youth-1", "mother", new(2026, 3, 1), new(2026, 10, 31)), new Interest("umpire-1", InterestOf.Team, "WRE-2", "child plays there"),
        new Interest("umpire-2", InterestOf.League, "wrenfall", "post"), new Pairing("umpire-1", "umpire-2", PairingKind.Apart, new(2026, 3, 1), new(2026, 10, 31)),
        new Pairing("youth-1", "umpire-2", PairingKind.Mentor, new(2026, 5, 10), new(2026, 5, 24)), new HomePlace("umpire-1", 41.44, -88.25),
        new Visit("umpire-1", Position.Plate, new(2026, 5, 2), "umpire-2"), new Evaluation("G-3/umpire-1/umpire-2", "umpire-1", "umpire-2", new(2026, 5, 12), "G-3", "plate", "SB 12U", 1, 60, "close; to the end", "slot 3; zone 4; timing not seen; moves out 2; rules 4; handling 4; crew 3", "the same zone\nquick", "slot: head still\nappeal: wait", "I lost the slot; \"twice\", I think.", ""),
        new Coordination("G-2", "mother"), new GameOver("G-3", new(2026, 5, 12, 19, 35, 0)),
        new ElsewhereGame("umpire-2", new(2026, 5, 16, 15, 0, 0), new(2026, 5, 16, 17, 0, 0), "base"),
        new Assignment("G-1", "plate", "umpire-1"), new Assignment("G-1", "base", null), new Assignment("G-2", "plate", "umpire-2"),
        new AskedSwap("swap-1", "umpire-1", "G-1", "plate", "umpire-2", "G-2", "plate", new DateTime(2026, 5, 14, 18, 0, 0, DateTimeKind.Utc), SwapState.Asked, "umpire-1"),
        new Player("TAR-1-07", "Mara T."), new Player("WRE-1-02", "Nell O."), new RosterPlace("TAR-1-07", "TAR-1", 7), new RosterPlace("TAR-1-07", "WRE-2", 17),
        new RosterPlace("WRE-1-02", "WRE-1", 2),
        new Appearance("G-3", "TAR-1-07", "TAR-1", "home book", new(2026, 5, 12), 1, 48, 44, 4, 0, 12), new Appearance("G-3", "TAR-1-07", "TAR-1", "visitors' book", new(2026, 5, 12), 1, 50, 44, 4, 0, 12),
        new Offer("base work", new(2026, 5, 30), new(9, 0), "Tarnholt Mill", "umpire-2"), new Attendance("youth-1", "base work", new(2026, 3, 7), "umpire-2"), new Attendance("umpire-1", "base work", new(2026, 3, 7), "umpire-2"),
        new Sat("umpire-1", "base softball 12U", "base softball 12U 2026 A", new(2026, 3, 14), 20, 25, 75, 8.625, "softball/12U", Position.Base, "umpire-2", "chief"),
        new Sat("youth-1", "base softball 12U", "base softball 12U 2026 A", new(2026, 3, 14), 22, 25, 75, 8.625, "softball/12U", Position.Base, "umpire-2", null),
        new Answered("youth-1", new DateTime(2026, 5, 12, 1, 2, 3, DateTimeKind.Utc), "1gqrj2jnak", "softball: ball out of play: R3a: runner", "ball out of play", "softball/12U", "1A2B3C4D", "second, \"at once\"", true, 12, ""),
        new Answered("umpire-1", new DateTime(2026, 3, 14, 15, 0, 0, DateTimeKind.Utc), "1gqrj2jnak", "softball: ball out of play: R3a: runner", "ball out of play", "softball/12U", "1A2B3C4D", "", false, 0, "base softball 12U 2026 A"),
        new LocalOption("Tarnholt", 1, OptionStatus.Published, "tarnholt", LayerText, "chief", new DateTime(2026, 2, 1, 12, 0, 0, DateTimeKind.Utc).AddMilliseconds(345)),
        new LocalOption("Tarnholt", 2, OptionStatus.Proposed, "tarnholt", LayerText + "\n", "other", new DateTime(2026, 3, 1, 12, 0, 0, DateTimeKind.Utc)),
    ];
}
