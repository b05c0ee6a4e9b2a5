namespace Umpirage.Store.Files;

/// <summary>One thing wrong in a file: its row (the header is row 1), the column, what was found, what is allowed.</summary>
public sealed record FileFault(int Row, string Column, string Found, string Allowed)
{
    public override string ToString() =>
        $"row {Row}{(Column == "" ? "" : $", {Column}")}: found {(Found == "" ? "nothing" : $"'{Short(Found.ReplaceLineEndings(" "))}'")}; allowed is {Allowed}";

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";
}
