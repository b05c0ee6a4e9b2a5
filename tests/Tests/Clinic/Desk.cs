using Umpirage.District.Clinic;
using Umpirage.District.Diamonds;

namespace Umpirage.Tests.Clinic;

/// <summary>The project's own phrases, plan and banks, read once.</summary>
internal static class Desk
{
    public static IReadOnlyList<Finding> Findings => findings;
    private static readonly List<Finding> findings = [];

    public static PhraseBook Phrases { get; } = PhraseReader.Read(Shelf.Files(Folder.Of("codes", "phrases"), "*.phrases").Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))), Shelf.Codes, findings);

    public static LessonPlan Plan { get; } = LessonPlan.Read("plan.txt", File.ReadAllText(Folder.Of("codes", "lessons", "plan.txt")), Shelf.Codes, findings)!;

    public static IReadOnlyList<Misbelief> Misbeliefs { get; } = MisbeliefReader.Read("misbeliefs.txt", File.ReadAllText(Folder.Of("codes", "lessons", "misbeliefs.txt")), Shelf.Codes, findings);

    public static Syllabus Syllabus { get; } = new(Shelf.Codes, Phrases, Plan, Misbeliefs,
        Shelf.Codes.Sheets.ToDictionary(s => s.Name, s => Directory.Exists(Folder.Of("casebook", Words.Slug(s.Name))) ? Directory.GetFiles(Folder.Of("casebook", Words.Slug(s.Name))).Length : 0));

    public static IReadOnlyDictionary<string, Picture> Pictures { get; } =
        Shelf.Files(Folder.Of("codes", "pictures"), "*.picture").Select(f => Picture.Read(Path.GetFileName(f), File.ReadAllText(f), Shelf.Codes, findings)!).ToDictionary(p => p.Sheet);

    public static Bank Softball { get; } = Of("softball/12U");
    public static Bank Baseball { get; } = Of("baseball/12U");

    public static Bank Of(string address)
    {
        var mine = new List<Finding>();
        var bank = Bank.Of(Shelf.Codes, Phrases, Shelf.Code(Shelf.Codes, address), mine);
        Assert.Empty(mine);
        return bank;
    }
}
