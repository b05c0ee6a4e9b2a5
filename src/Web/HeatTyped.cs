using System.Globalization;
using Umpirage.District.Clock;

namespace Umpirage.Web;

/// <summary>Heat as somebody typed it: air and humidity, or the index itself.</summary>
internal static class HeatTyped
{
    private const double Mildest = 40, Hottest = 180;

    /// <summary>The heat index in degrees Fahrenheit, never rounded to the milder side; null when nothing was typed, or with every fault.</summary>
    public static double? Read(string? air, string? humidity, string? index, List<string> faults)
    {
        if (!string.IsNullOrWhiteSpace(air) || !string.IsNullOrWhiteSpace(humidity)) return HeatIndex.Read(Typed.Cut(air, 20), Typed.Cut(humidity, 20), faults)?.Counted;
        if (string.IsNullOrWhiteSpace(index)) return null;
        if (double.TryParse(Typed.Cut(index, 20), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var f) && f is >= Mildest and <= Hottest) return f;
        faults.Add($"heat index: found '{Typed.Cut(index, 20)}'; allowed is {Mildest} to {Hottest} F");
        return null;
    }
}
