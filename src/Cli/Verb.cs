using Umpirage.Cli.Verbs;

namespace Umpirage.Cli;

/// <summary>Finds the verb that was typed. Exit codes: 0 fine, 1 the answer is no or there are findings, 2 the input cannot be used.</summary>
internal static class Verb
{
    public const int Fine = 0, No = 1, Unusable = 2;

    private static readonly Dictionary<string, Func<Request, int>> All = new()
    {
        ["find"] = FindVerb.Run, ["rule"] = RuleVerb.Run, ["ask"] = AskVerb.Run, ["check"] = CheckVerb.Run, ["casebook"] = CasebookVerb.Run,
        ["crossover"] = CrossoverVerb.Run, ["table"] = TableVerb.Run, ["tally"] = TallyVerb.Run, ["pack"] = PackVerb.Run, ["replay"] = ReplayVerb.Run,
        ["import"] = ImportVerb.Run, ["export"] = ExportVerb.Run, ["fit"] = FitVerb.Run, ["bank"] = BankVerb.Run, ["lesson"] = LessonVerb.Run, ["backup"] = BackupVerb.Run, ["restore"] = BackupVerb.Restore,
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

          ./umpirage find "PLAIN WORDS" [CODE]   which subject a question is about, and the facts its words state
          ./umpirage ask [SUBJECT] [CODE]        asks only what matters, then rules
          ./umpirage check [SHEET...]            proves every sheet, division, book and date free of gaps and conflicts
          ./umpirage casebook [FOLDER]           rules published plays and compares
          ./umpirage crossover CODE CODE         what changes between two divisions, editions or games
          ./umpirage table SHEET [CODE]          the decision table of a sheet
          ./umpirage tally [SHEET...]            cases / distinct rulings, sheet by sheet
          ./umpirage replay FILE... [--to LINE]  follows a written game: line score, proof of the book, how it goes on
          ./umpirage desk                        opens the desk in the browser, on the demonstration district
          ./umpirage import KIND FILE [--dry-run]   takes a CSV file in, all of it or nothing
          ./umpirage export KIND                 writes it out again
          ./umpirage backup FILE                 everything in one file, and back: ./umpirage restore FILE
          ./umpirage lesson CODE CODE --out FOLDER   slides, handout and key on what differs, with a file of your own
          ./umpirage bank [CODE] [SHEET...]      questions drawn from the codes; bank --coverage counts what they exercise
          ./umpirage fit FILE.csv                the questions of a test by slope and difficulty (two-parameter model)
          ./umpirage pack CODE FILE              one division's code, small enough for a phone

        A code is game/division, layers, and a date:  softball/12U@2026-05-16   baseball/18U+NFHS@2019-04-01   "SB 12U"
        desk, import, export, backup and restore work on the demonstration, or on --data FILE.db or --postgres CONNECTION.
        --json on any verb for programs.   --codes FOLDER and --casebook FOLDER read other folders than the project's.
        Advice from entered facts and a stated edition; the printed rule book and local authority rule.
        """;
}
