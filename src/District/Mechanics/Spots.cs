using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Mechanics;

/// <summary>A place on the field in feet from the rear point of home plate: across (positive on the first base side) and deep.</summary>
public sealed record Place(double Across, double Deep);

/// <summary>Where the spots that manuals name lie, for a base distance and with a manual's own feet. Data: codes/mechanics/spots.txt.</summary>
public sealed class Spots
{
    private sealed record Spot(double X, double Y, string? Past, string? Foul);

    private readonly Dictionary<string, Spot> spots = new(StringComparer.OrdinalIgnoreCase);
    private static readonly double Along = Math.Sqrt(0.5);

    public IReadOnlyCollection<string> Names => spots.Keys;

    /// <summary>Reads the spots; null, with every fault, when a line cannot be read.</summary>
    public static Spots? Read(string file, string text, List<Finding> findings)
    {
        var (before, read) = (findings.Count, new Spots());
        foreach (var line in SourceLine.Of(text))
        {
            var colon = line.Text.LastIndexOf(':');
            var parts = colon < 0 ? [] : line.Text[(colon + 1)..].Split('|').Select(p => p.Trim()).ToArray();
            var numbers = parts.Length == 0 ? [] : parts[0].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(n => double.TryParse(n, CultureInfo.InvariantCulture, out var v) && Math.Abs(v) <= 3 ? v : double.NaN).ToArray();
            if (numbers.Length != 2 || numbers.Any(double.IsNaN))
            {
                findings.Add(new(FindingKind.UnreadableLine, file, line.Number, $"cannot read '{line.Short}'; write 'spot: across deep' in base lengths from -3 to 3, then '| past first [parameter]' or '| into foul ground [parameter]'"));
                continue;
            }
            string? Named(string key) => parts.Skip(1).FirstOrDefault(p => p.StartsWith(key, StringComparison.Ordinal)) is { } part ? part[key.Length..].Trim().Trim('[', ']') : null;
            read.spots[line.Text[..colon].Trim()] = new(numbers[0], numbers[1], Named("past first"), Named("into foul ground"));
        }
        return findings.Count > before ? null : read;
    }

    /// <summary>The place of a spot; null for words that name none.</summary>
    /// <param name="feet">Feet from base to base.</param>
    public Place? Of(string spot, double feet, CodeSheet manual)
    {
        if (!spots.TryGetValue(spot, out var at)) return null;
        double Own(string? name) => name is null ? 0 : manual.Values.FirstOrDefault(v => Words.Same(v.Key.Name, name)).Value?.Quantity?.Value ?? 0;
        var (past, foul) = (Own(at.Past), Own(at.Foul));
        return new(at.X * feet + (past + foul) * Along, at.Y * feet + (past - foul) * Along);
    }
}
