using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Cards;
using Umpirage.District.Clinic;
using Umpirage.District.Diamonds;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;
using Umpirage.District.Visits;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>
/// The rule code as the desk has it: the sheets and layers of the codes folder, and on top of them what the district has published. It is read
/// again when something is published.
/// </summary>
public sealed class Shelf
{
    private const int MostTables = 400, MostCrossovers = 20;

    private readonly Settings settings;
    private readonly Func<DistrictStore> open;
    private volatile Reading now;

    public Shelf(Settings settings, Func<DistrictStore> open)
    {
        (this.settings, this.open) = (settings, open);
        now = Read();
    }

    public Codebook Book => now.Book;
    public PitchingCodes Pitching => now.Pitching;

    /// <summary>The district's evaluation forms.</summary>
    public FormBook Forms => now.Forms;

    /// <summary>What weighs how much when the next clinic is planned.</summary>
    public Weights Weights => now.Weights;

    /// <summary>What the codes say of calendars; kept, like the codes themselves, until something is published.</summary>
    public CalendarCodes Calendar(DistrictStore store)
    {
        var reading = now;
        return reading.Calendar ??= new(reading.Book, store.Leagues.AsNoTracking().ToDictionary(l => l.Key));
    }

    /// <summary>The sentences in which facts are told and decisions asked for; read when first needed.</summary>
    public PhraseBook Phrases => now.Phrases.Value;

    /// <summary>What cards ask of the codes, and how cards are laid out.</summary>
    public CardCodes Cards => now.Cards;
    public IReadOnlyList<CardPlan> CardPlans => now.CardPlans;

    /// <summary>Eight digits that change with any word of the rule code: stands on everything printed from it.</summary>
    public string Stamp => now.Stamp;

    private sealed record Reading(Codebook Book, string Stamp, IReadOnlyDictionary<string, Picture> Pictures, FormBook Forms, Weights Weights, IReadOnlyList<CardPlan> CardPlans, Lazy<PhraseBook> Phrases)
    {
        public CardCodes Cards { get; } = new(Book);
        public PitchingCodes Pitching => Cards.Pitching;
        public CalendarCodes? Calendar { get; set; }
        public WorkedOut<(string One, string Two, DateOnly Day), IReadOnlyList<SheetDifference>> Crossovers { get; } = new((key, found) =>
        {
            void Fault(string fault) => found.Add(new(FindingKind.UnknownWord, "desk", 0, fault));
            var (here, there) = (Casebook.Code(Book, key.One, key.Day, Fault), Casebook.Code(Book, key.Two, key.Day, Fault));
            return here is null || there is null ? null : Rules.Codes.Crossover.Of(Book, here, there, []);
        }, MostCrossovers);
        public WorkedOut<(string Sheet, string Code, DateOnly Day), Table> Tables { get; } = new((key, found) => Casebook.Table(Book, key.Code, key.Sheet, key.Day, "desk", found), MostTables);
    }

    public void Renew() => now = Read();

    private Reading Read()
    {
        using var store = open();
        var published = store.Options.AsNoTracking().Where(o => o.Status == OptionStatus.Published).AsEnumerable().GroupBy(o => o.Layer).Select(g => g.MaxBy(o => o.Version)!).ToList();
        return Of(published.Select(o => new SourceText(o.Layer + ".layer", o.Text)));
    }

    /// <summary>The text of a layer of the codes folder, by its name; null when there is none.</summary>
    public string? LayerText(string name) => Files("layers", "*.layer").FirstOrDefault(f => Words.Same(NameOf(f, Book.Roster), name))?.Text;

    private static string NameOf(SourceText layer, Roster roster) => LayerReader.Read(layer.File, layer.Text, roster, []).Name;

    /// <summary>The codebook with these layers in the place of those of the same name.</summary>
    public Codebook With(IEnumerable<SourceText> layers) => BookOf(layers).Book;

    private (Codebook Book, string Stamp) BookOf(IEnumerable<SourceText> layers)
    {
        var rosterText = new SourceText("roster.txt", File.ReadAllText(Path.Combine(settings.Codes, "roster.txt")));
        var roster = Roster.Read(rosterText.File, rosterText.Text, []);
        var own = layers.ToList();
        var names = own.Select(l => NameOf(l, roster)).ToList();
        List<SourceText> files = [.. Files("sheets", "*.sheet"), .. Files("layers", "*.layer").Where(f => !names.Any(n => Words.Same(n, NameOf(f, roster)))), .. own];
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(rosterText.Text + string.Concat(files.Select(f => f.File + "\n" + f.Text))));
        return (Codebook.Read(rosterText, files), Convert.ToHexString(hash)[..8]);
    }

    private Reading Of(IEnumerable<SourceText> layers)
    {
        var (book, stamp) = BookOf(layers);
        return new(book, stamp, Files("pictures", "*.picture").Select(f => District.Diamonds.Picture.Read(f.File, f.Text, book, [])).OfType<Picture>().ToDictionary(p => p.Sheet, StringComparer.OrdinalIgnoreCase), Data(FormBook.Read, "evaluations", "forms.txt"), Data(Weights.Read, "clinic", "weights.txt"),
            [.. Files("cards", "*.card").Select(f => CardPlanReader.Read(f.File, f.Text, book, [])).OfType<CardPlan>()], new(() => PhraseReader.Read(Files("phrases", "*.phrases"), book, [])));
    }

    /// <summary>A file of the codes folder, read whole.</summary>
    /// <exception cref="InvalidDataException">It has faults; the message tells them all.</exception>
    private T Data<T>(Func<string, string, List<Finding>, T?> read, params string[] path) where T : class
    {
        var findings = new List<Finding>();
        return read(path[^1], File.ReadAllText(Path.Combine([settings.Codes, .. path])), findings) ?? throw new InvalidDataException(string.Join("\n", findings));
    }

    /// <summary>Files of a folder of the codes, in the order of their names.</summary>
    internal IEnumerable<SourceText> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(settings.Codes, folder), pattern).Order(StringComparer.Ordinal).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f)));

    /// <summary>The worked-out sheet under a code; null with the reasons. Kept, since the same few are asked again and again.</summary>
    public Table? Table(string code, string sheet, DateOnly day, List<Finding> findings) => now.Tables.Of((sheet, code, day), findings);

    /// <summary>How a subject is pictured; null where it has no picture of its own.</summary>
    public Picture? Picture(string sheet) => now.Pictures.GetValueOrDefault(sheet);

    /// <summary>The pictures of all subjects that have one, by subject.</summary>
    public IReadOnlyDictionary<string, Picture> Pictures => now.Pictures;

    /// <summary>Two codes compared, sheet by sheet; kept like tables are.</summary>
    public IReadOnlyList<SheetDifference> Crossover(string one, string two, DateOnly day, List<string> faults)
    {
        var found = new List<Finding>();
        var compared = now.Crossovers.Of((one, two, day), found);
        faults.AddRange(found.Select(f => f.Message));
        return compared ?? [];
    }

    /// <summary>The code taken when nobody named one: a division as it is played here, else the roster's.</summary>
    public string UsualCode(IQueryable<Division> played) =>
        played.AsNoTracking().Where(d => d.Crew > 1).OrderByDescending(d => d.Key).Select(d => d.Code).FirstOrDefault() ?? Book.Roster.UsualCode();

    /// <summary>The codes people choose among: the divisions as the leagues play them, then each game, division and book.</summary>
    public IReadOnlyList<(string Group, string Code, string Name)> Choices(IEnumerable<Division> played)
    {
        var roster = Book.Roster;
        var list = new List<(string, string, string)>();
        list.AddRange(played.Select(d => ("Played here", d.Code, d.Key)));
        foreach (var layer in Book.Layers.Where(l => l.Kind == LayerKind.League))
            foreach (var division in played.Where(d => layer.On is { } on && d.Code.EndsWith("+" + on, StringComparison.OrdinalIgnoreCase)))
                list.Add(($"{layer.Name} options", $"{division.Code[..division.Code.LastIndexOf('+')]}+{layer.Name}", $"{division.Key}, {layer.Name}"));
        foreach (var game in roster.Games)
        {
            list.AddRange(roster.Divisions.Select(d => ($"{game} at large", $"{game}/{d}", $"{game} {d}")));
            foreach (var body in roster.Bodies.Where(b => b.Game == game))
                list.AddRange(roster.Divisions.Select(d => (body.Title, $"{game}/{d}+{body.Name}", $"{game} {d}, {body.Name}")));
        }
        return list;
    }
}
