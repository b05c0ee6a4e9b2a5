using Umpirage.District.Pitchers;
using Umpirage.Rules.Codes;

namespace Umpirage.Store.Files;

/// <summary>What a row may refer to: keys on record, and those its own file brings.</summary>
public sealed class Known(DistrictStore store, FileKind kind, IReadOnlyList<FileRow> rows, Codebook? book)
{
    private HashSet<string>? leagues, divisions, teams, parks, diamonds, people, minors, guardians, games, players;

    public DistrictStore Store => store;
    /// <summary>The rule code that layers and divisions are held against.</summary>
    public Codebook? Book => book;
    public IReadOnlySet<string> Leagues => leagues ??= [.. store.Leagues.Select(l => l.Key)];
    public IReadOnlySet<string> Divisions => divisions ??= [.. store.Divisions.Select(d => d.Key)];
    public IReadOnlySet<string> Teams => teams ??= [.. store.Teams.Select(t => t.Key)];
    public IReadOnlySet<string> Parks => parks ??= [.. store.Parks.Select(p => p.Key)];
    public IReadOnlySet<string> Diamonds => diamonds ??= [.. store.Diamonds.Select(d => d.Key)];
    public IReadOnlySet<string> Games => games ??= [.. store.Games.Select(g => g.Key)];
    public IReadOnlySet<string> Players => players ??= [.. store.Players.Select(p => p.Key)];
    /// <summary>Other kinds have a column 'person' too, but only a file of people brings any.</summary>
    public IReadOnlySet<string> People => people ??=
        [.. store.People.Select(p => p.Key), .. kind is PersonFile ? rows.Select(r => r.Cells.GetValueOrDefault("person", "").Trim()) : []];

    /// <summary>The day from which on nothing can have been played yet.</summary>
    public DateOnly Today => store.Today;

    /// <summary>Pitching lines on record, by game, player, counter and day.</summary>
    public ILookup<(string, string, string, DateOnly), Appearance> Logs => logs ??= store.Appearances.AsEnumerable().OrderBy(a => a.Entry).ToLookup(a => (a.Game, a.Player, a.Counter, a.Day));

    private ILookup<(string, string, string, DateOnly), Appearance>? logs;

    /// <summary>Guardians on record, by child.</summary>
    public ILookup<string, string> GuardiansOf => guardiansOf ??= store.Guardianships.AsEnumerable().OrderBy(g => g.Guardian, StringComparer.Ordinal).ToLookup(g => g.Child, g => g.Guardian);

    private ILookup<string, string>? guardiansOf;

    /// <summary>Guardians on record.</summary>
    public IReadOnlySet<string> Guardians => guardians ??= [.. store.Guardianships.Select(g => g.Guardian)];

    /// <summary>Minors, as the file says, else as on record.</summary>
    public IReadOnlySet<string> Minors => minors ??= ReadMinors();

    private HashSet<string> ReadMinors()
    {
        HashSet<string> found = [.. store.People.AsEnumerable().Where(p => p.IsMinor).Select(p => p.Key)];
        foreach (var row in rows)
        {
            if (District.People.AgeBands.Read(row.Cells.GetValueOrDefault("age band", "").Trim()) is not { } band) continue;
            var key = row.Cells.GetValueOrDefault("person", "").Trim();
            if (District.People.AgeBands.IsMinor(band)) found.Add(key); else found.Remove(key);
        }
        return found;
    }
}
