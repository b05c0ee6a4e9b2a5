using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Calendar;

/// <summary>The codes of games, each worked out once for as long as nothing in it changes.</summary>
/// <param name="leagues">By key.</param>
public sealed class CalendarCodes(Codebook book, IReadOnlyDictionary<string, League> leagues)
{
    private readonly DateOnly[] changes = [.. Days(book).Distinct().Order()];
    private readonly Dictionary<(string, string, string), string> addresses = [];
    private readonly Dictionary<(string, int), CalendarCode> codes = [];
    private readonly Dictionary<(string, int), PitchingCode> pitching = [];

    /// <summary>The address of the code that governs a game of a division between two leagues' teams, without a day.</summary>
    public string Address(Division division, string home, string visitor)
    {
        lock (addresses)
        {
            if (!addresses.TryGetValue((division.Key, home, visitor), out var known))
                addresses[(division.Key, home, visitor)] = known = Governing.Code(book, division, Known(home), Known(visitor));
            return known;
        }
    }

    /// <summary>A code on a day. InvalidDataException when the address or a sheet cannot be used.</summary>
    public CalendarCode On(string address, DateOnly day) => Taken(codes, address, day, CalendarCode.Of);

    /// <summary>What a code says of pitchers on a day. InvalidDataException when the address or a sheet cannot be used.</summary>
    public PitchingCode PitchingOn(string address, DateOnly day) => Taken(pitching, address, day, PitchingCode.Of);

    private delegate T? Reading<T>(Codebook book, string address, DateOnly day, List<Finding> findings);

    private T Taken<T>(Dictionary<(string, int), T> known, string address, DateOnly day, Reading<T> read) where T : class
    {
        var place = Array.BinarySearch(changes, day);
        var key = (address, place < 0 ? ~place : place + 1);
        lock (known)
        {
            if (known.TryGetValue(key, out var code)) return code;
            var findings = new List<Finding>();
            return known[key] = read(book, address, day, findings) ?? throw new InvalidDataException(string.Join('\n', findings));
        }
    }

    /// <summary>A league that is not on record has no options.</summary>
    private League Known(string key) => leagues.GetValueOrDefault(key) ?? new(key, key);

    private static IEnumerable<DateOnly> Days(Codebook book) =>
        book.Sheets.SelectMany(s => s.Parameters).SelectMany(p => p.Lines).Concat(book.Layers.SelectMany(l => l.Changes).SelectMany(c => c.Lines))
            .SelectMany(l => new[] { l.Scope.From, l.Scope.Until?.AddDays(1) }).OfType<DateOnly>();
}
