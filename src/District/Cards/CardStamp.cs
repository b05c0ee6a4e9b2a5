using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Cards;

/// <summary>Which code a card was made from: its address, the layer or book that speaks last, the day it holds for, and eight digits that change with any value or rule of it.</summary>
public sealed record CardStamp(string Address, string Edition, DateOnly Day, string Digest)
{
    public static CardStamp Of(Code code)
    {
        var text = new StringBuilder(code.Address.ToString());
        foreach (var sheet in code.Book.Sheets.Where(s => s.Speaks(code.Game)).OrderBy(s => s.Name, StringComparer.Ordinal))
        {
            text.Append('\n').Append(sheet.Name);
            foreach (var parameter in sheet.Parameters)
                if (code.Value(parameter) is { } value) text.Append('\n').Append(parameter.Name).Append('=').Append(value.Value).Append('|').Append(value.Citation);
            foreach (var rule in sheet.Rules) Put(text, rule);
        }
        foreach (var added in code.Stack.SelectMany(l => l.Additions)) Put(text, added.Exception);
        return new((code.Address with { Date = null }).ToString(), code.LayerNames.Last(), code.Date, Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..8].ToLowerInvariant());
    }

    private static void Put(StringBuilder text, Clause clause)
    {
        text.Append('\n').Append(clause.Id).Append(clause.Title);
        foreach (var phrase in clause.When.Concat(clause.Then)) text.Append('|').Append(phrase.Text);
        foreach (var exception in clause.Exceptions) Put(text, exception);
    }

    public string InWords => $"{Day.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture)}, code {Address}, {Edition}, stamp {Digest}";
}
