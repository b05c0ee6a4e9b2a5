using Umpirage.Cli.Verbs;

namespace Umpirage.Cli;

/// <summary>Finds the verb that was typed. Exit codes: 0 fine, 1 the answer is no or there are findings, 2 the input cannot be used.</summary>
internal static class Verb
{
    public const int Fine = 0, No = 1, Unusable = 2;

    private static readonly Dictionary<string, Func<Request, int>> All = new()
    {
        ["find"] = FindVerb.Run,
        ["rule"] = RuleVerb.Run,
        ["ask"] = AskVerb.Run,
        ["check"] = CheckVerb.Run,
        ["casebook"] = CasebookVerb.Run,
        ["crossover"] = CrossoverVerb.Run,
        ["table"] = TableVerb.Run,
        ["tally"] = TallyVerb.Run,
        ["pack"] = PackVerb.Run,
        ["replay"] = ReplayVerb.Run,
        ["pitchers"] = PitchersVerb.Run,
        ["import"] = ImportVerb.Run,
        ["export"] = ExportVerb.Run,
        ["backup"] = BackupVerb.Run,
        ["restore"] = BackupVerb.Restore,
        ["schedule"] = ScheduleVerb.Run,
        ["clock"] = ClockVerb.Run,
        ["sun"] = SunVerb.Run,
        ["heat"] = HeatVerb.Run,
        ["crews"] = CrewsVerb.Run,
        ["diamond"] = DiamondVerb.Diamond,
        ["stakeout"] = DiamondVerb.StakeOutSheet,
        ["survey"] = DiamondVerb.Survey,
        ["gear"] = GearVerb.Run,
        ["cards"] = CardsVerb.Run,
        ["fit"] = FitVerb.Run,
        ["bank"] = BankVerb.Run,
        ["lesson"] = LessonVerb.Run,
    };

    public static int Run(string[] args)
    {
        if (args.Length == 0 || args[0] is "help" or "--help" or "-h") { Console.WriteLine(Help); return Fine; }
        if (!All.TryGetValue(args[0], out var verb))
        {
            Console.Error.WriteLine($"there is no verb '{args[0]}'; {Rules.Ground.Words.Offer(args[0], [.. All.Keys])}");
            return Unusable;
        }
        try
        {
            return verb(Request.Read(args[1..]));
        }
        catch (Exception fault) when (fault is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine(fault.Message);
            return Unusable;
        }
    }

    private const string Help = """
        Umpirage: rulings, with their reasons, from a rule code held as data.

          ./umpirage rule casebook/double-first-base/own-white-only-appealed.play
              the ruling on a described play: why, the source, what would change it, and how the other game rules it

          find "PLAIN WORDS" [CODE], ask [SUBJECT] [CODE]         the subject of a question; what matters asked, then ruled
          check, table, tally [SHEET...], casebook, replay FILE   proofs, decision tables, published plays, a game followed
          crossover CODE CODE, pack CODE FILE                     what changes between two codes; a code for a phone
          pitchers --on DATE [--team T] [--game G]                who may pitch, how much is left, what it will cost
          pitchers plan --team T --from DATE --to DATE            who pitches how much in the coming games
          schedule check [FILE]                                   what a schedule breaks, and the least change that mends it
          schedule repair --closed all:2026-05-21, schedule undo PLAN   new places for what cannot be played, and back
          clock FILE [--at HH:MM]                                 time left, thunder, dark, what becomes of the game (demo/thunder.clock)
          sun LAT LON DATE [--zone ZONE], heat F RH [CODE]        sunrise and sunset; the heat index and what it asks for
          sun DIAMOND DATE [--from 17:30 --until 20:00]           the sun over a diamond: in whose eyes, and when
          crews solve|check|forecast --week DATE                  crews by stated priorities; what stays open and why
          crews why PERSON GAME, crews subs GAME                  every reason for no; who else
          diamond, stakeout DIVISION, survey FILE, gear FILE      a field laid out and checked; bats and other gear looked at
          cards --game GAME --out FOLDER                          what people carry to a game, to print: plate, pitching, field, gear, weather, ...
          lesson CODE CODE --out FOLDER, bank --coverage, fit FILE  a crossover lesson; the questions computed; a 2PL fit
          desk                                                    opens the desk in the browser
          import KIND FILE [--dry-run], export KIND               a CSV file or a calendar, all of it or nothing
          backup FILE, restore FILE                               everything in one file, and back

        A code is game/division, layers, and a date:  softball/12U@2026-05-16   baseball/18U+NFHS@2019-04-01   "SB 12U"
        The desk and whatever needs a district work on the demonstration, or on --data FILE.db or --postgres CONNECTION.
        --json on any verb for programs.   --codes FOLDER and --casebook FOLDER read other folders than the project's.
        A verb typed wrongly says how it is written. Advice from entered facts and a stated edition; the printed rule book and local authority rule.
        """;
}
