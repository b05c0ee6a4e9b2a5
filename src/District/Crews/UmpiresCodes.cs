using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Crews;

/// <summary>What the rule codes say of umpires, worked out once for every code and set of values.</summary>
public sealed class UmpiresCodes(Codebook book)
{
    private readonly ConcurrentDictionary<(string Address, DateOnly Day), UmpiresCode> byDay = [];
    private readonly ConcurrentDictionary<string, AskedSheet> bySheet = [];

    private static readonly ConditionalWeakTable<Codebook, UmpiresCodes> Kept = [];

    /// <summary>The one for a codebook: what was worked out for it is kept as long as it is.</summary>
    public static UmpiresCodes For(Codebook book) => Kept.GetValue(book, b => new(b));

    public Codebook Book => book;

    /// <summary>The code of an address on a day.</summary>
    /// <exception cref="InvalidDataException">The address or a sheet cannot be used; the message says why.</exception>
    public UmpiresCode Of(string address, DateOnly day) => byDay.GetOrAdd((address, day), key =>
    {
        var faults = new List<string>();
        if (Casebook.Code(book, key.Address, key.Day, faults.Add) is not { } code) throw new InvalidDataException(string.Join("; ", faults));
        return new(code, Under(code, "umpire's day"), Under(code, "heat"), Under(code, "playing hours"), new(() => YouthCrew.Of(Under(code, "youth crew"))));
    });

    /// <summary>Values change on few days: a table is made anew only when one did.</summary>
    private AskedSheet Under(Code code, string name)
    {
        var findings = new List<Finding>();
        if (book.Sheet(name) is not { } sheet || book.Bind(sheet, code.Stack, findings) is not { } bound || CodeSheet.Of(bound, code, findings) is not { } under)
            throw new InvalidDataException($"the sheet '{name}' cannot be used under {code.Address}: {string.Join("; ", findings)}");
        var values = string.Join('|', under.Values.Select(v => $"{v.Key.Name}={v.Value.Value}={v.Value.Layer}"));
        return bySheet.GetOrAdd($"{code.Address with { Date = null }}|{name}|{values}", _ =>
        {
            var table = Table.Of(under);
            if (table.Faults.Count > 0 || table.TooEntangled) throw new InvalidDataException($"the sheet '{name}' has gaps or conflicts under {code.Address}; run check");
            return new(table);
        });
    }
}
