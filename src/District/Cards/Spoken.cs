using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Cards;

/// <summary>
/// A value of the code as it is said on a card: words for any value, and others for particular ones. Without a parameter the value is whether the
/// game knows the subject at all.
/// </summary>
/// <param name="Otherwise">{value} is the value as written, {number} its number alone, {time} its minutes as hours and minutes. Empty: nothing is said.</param>
public sealed record Spoken(string Sheet, string? Parameter, string Otherwise, IReadOnlyDictionary<string, string> ByValue)
{
    /// <summary>The value under a code; null where the code's game does not know the subject.</summary>
    public (string Word, Quantity? Quantity, string Layer)? Value(Code code)
    {
        if (code.Book.Sheet(Sheet) is not { } sheet) return null;
        if (Parameter is null) return (sheet.Speaks(code.Game) ? "yes" : "no", null, "");
        return sheet.Speaks(code.Game) && code.Value(sheet.Parameters.First(p => Words.Same(p.Name, Parameter))) is { } value ? (value.Value, value.Quantity, value.Layer) : null;
    }

    /// <summary>What is said of the code's value; null when nothing is.</summary>
    public string? Say(Code code)
    {
        if (Value(code) is not { } value) return null;
        var words = ByValue.FirstOrDefault(v => Words.Same(v.Key, value.Word)) is { Key: not null } own ? own.Value : Otherwise;
        if (words is "" or "-") return null;
        var number = value.Quantity is { IsNone: false } q ? q.Value : double.NaN;
        return words.Replace("{value}", value.Word, StringComparison.Ordinal).Replace("{number}", number.ToString("0.##", CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .Replace("{time}", double.IsNaN(number) ? value.Word : TimeSpan.FromMinutes(number).ToString("h\\:mm", CultureInfo.InvariantCulture), StringComparison.Ordinal);
    }
}
