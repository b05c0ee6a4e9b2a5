using Umpirage.District.Clinic;
using Umpirage.District.Mechanics;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Web;

/// <summary>The manuals of mechanics of the codes folder, read once.</summary>
public sealed class Manuals(Settings settings, Shelf shelf)
{
    private const int MostBanks = 20;

    private string Folder => Path.Combine(settings.Codes, "mechanics");

    private Codebook? book;
    private Spots? spots;
    private readonly System.Collections.Concurrent.ConcurrentDictionary<(string Code, DateOnly Day), Bank> banks = [];

    public Codebook Book => book ??= Codebook.Read(new SourceText("roster.txt", File.ReadAllText(Path.Combine(Folder, "roster.txt"))), shelf.Files("mechanics", "*.mechanics"));

    public Spots Spots => spots ??= Spots.Read("spots.txt", File.ReadAllText(Path.Combine(Folder, "spots.txt")), []) ?? throw new InvalidDataException("codes/mechanics/spots.txt cannot be read; a test names its faults");

    /// <summary>Feet from base to base, by the rules' own sheet of the field; null where they set none.</summary>
    public double? Feet(string code, DateOnly day) =>
        shelf.Table(code, "field", day, [])?.Sheet.Values.FirstOrDefault(v => Words.Same(v.Key.Name, "base distance")).Value?.Quantity?.Value;

    /// <summary>Questions on mechanics by one manual, from the same tables as the cards.</summary>
    public Bank Bank(CodeAddress address, DateOnly day)
    {
        if (banks.Count > MostBanks) banks.Clear();
        return banks.GetOrAdd((address.ToString(), day), _ => Draw(address, day));
    }

    private Bank Draw(CodeAddress address, DateOnly day)
    {
        var findings = new List<Finding>();
        var phrases = PhraseReader.Read(shelf.Files("mechanics", "*.phrases"), Book, findings);
        var faults = new List<string>();
        return Code.Of(Book, address, day, faults) is { } code ? District.Clinic.Bank.Of(Book, phrases, code, findings, each: 2) : throw new InvalidDataException(string.Join("; ", faults));
    }
}
