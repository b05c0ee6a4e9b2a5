using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

namespace Umpirage.Store.Files;

/// <summary>
/// Comma-separated text as RFC 4180 has it, in UTF-8. A cell that a spreadsheet would take for a formula is written behind an apostrophe,
/// and read without it.
/// </summary>
public static class CsvText
{
    /// <summary>Largest file taken, in bytes, and the most rows.</summary>
    public const int Largest = 32 << 20, MostRows = 200_000;

    private static readonly UTF8Encoding Strict = new(false, true);

    /// <summary>Faults of the file as such: encoding, headers, quoting.</summary>
    public static List<FileRow> Read(byte[] bytes, IReadOnlyList<Column> columns, List<FileFault> faults)
    {
        var rows = new List<FileRow>();
        if (bytes.Length > Largest) { faults.Add(new(1, "", $"{bytes.Length} bytes", $"at most {Largest} bytes")); return rows; }
        string text;
        try { text = Strict.GetString(bytes).TrimStart('\uFEFF'); }
        catch (DecoderFallbackException) { faults.Add(new(1, "", "bytes that are not UTF-8", "a file saved as CSV UTF-8")); return rows; }
        if (text.Contains('\0')) { faults.Add(new(1, "", "a zero byte", "text")); return rows; }
        // blank lines are counted, so that a fault names the row a spreadsheet shows
        var number = 1;
        var settings = new CsvConfiguration(CultureInfo.InvariantCulture) { MaxFieldSize = 200_000, IgnoreBlankLines = false, BadDataFound = args => Unquoted(args.RawRecord) };
        void Unquoted(string record)
        {
            if (faults.Count == 0 || faults[^1].Row != number) faults.Add(new(number, "", record.Trim(), "quotes around a whole cell, doubled inside it"));
        }
        using var parser = new CsvParser(new StringReader(text), settings);
        try
        {
            string[]? headers = null;
            for (; parser.Read(); number++)
            {
                var cells = parser.Record!;
                // a quote that is never closed takes the rest of the file into its cell
                if (parser.RawRecord.Count(c => c == '"') % 2 == 1) Unquoted(parser.RawRecord);
                if (cells.All(c => c.Trim() == "")) continue;
                if (headers is null)
                {
                    headers = [.. cells.Select(h => h.Trim())];
                    Headers(number, headers, columns, faults);
                    if (faults.Count > 0) return rows;
                    continue;
                }
                if (cells.Length != headers.Length)
                    faults.Add(new(number, "", $"{cells.Length} {(cells.Length == 1 ? "cell" : "cells")}", $"{headers.Length}, as many as headers"));
                if (rows.Count >= MostRows) faults.Add(new(number, "", "more rows", $"at most {MostRows} rows in a file"));
                if (faults.Count > 1000 || rows.Count >= MostRows) return rows;
                var row = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
                for (var i = 0; i < Math.Min(cells.Length, headers.Length); i++) row[headers[i]] = Plain(cells[i]);
                rows.Add(new(number, row));
            }
            if (headers is null && faults.Count == 0) faults.Add(new(1, "", "", $"a header row: {string.Join(",", columns.Select(c => c.Header))}"));
        }
        catch (CsvHelperException fault)
        {
            faults.Add(new(number, "", fault.GetType().Name, "comma-separated text"));
        }
        return rows;
    }

    private static void Headers(int number, string[] headers, IReadOnlyList<Column> columns, List<FileFault> faults)
    {
        List<string> known = [.. columns.Select(c => c.Header)];
        foreach (var header in headers.Where(h => !known.Contains(h, StringComparer.OrdinalIgnoreCase)))
            faults.Add(new(number, header, header, $"one of the headers; {Rules.Ground.Words.Offer(header, known)}"));
        foreach (var twice in headers.GroupBy(h => h, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            faults.Add(new(number, twice.Key, $"{twice.Count()} times", "each header once"));
        foreach (var missing in columns.Where(c => c.Needed && !headers.Contains(c.Header, StringComparer.OrdinalIgnoreCase)))
            faults.Add(new(number, missing.Header, "", $"a column '{missing.Header}': {missing.Meaning}"));
    }

    public static string Write(IReadOnlyList<Column> columns, IEnumerable<string?[]> rows)
    {
        var text = new StringWriter(CultureInfo.InvariantCulture);
        using var csv = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            NewLine = "\r\n",
            // a cell of several lines is one cell, whichever line ends it has
            ShouldQuote = args => ConfigurationFunctions.ShouldQuote(args) || args.Field?.AsSpan().ContainsAny('\r', '\n') == true,
        });
        foreach (var column in columns) csv.WriteField(column.Header);
        csv.NextRecord();
        foreach (var row in rows)
        {
            foreach (var cell in row) csv.WriteField(Guarded(cell ?? ""));
            csv.NextRecord();
        }
        csv.Flush();
        return text.ToString();
    }

    /// <summary>A sign begins a formula too, unless the whole cell is a number.</summary>
    private static bool Formula(string cell) =>
        cell.Length > 0 && (cell[0] is '=' or '@' or '\t' or '\r' || (cell[0] is '+' or '-'
            && !double.TryParse(cell, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _)));

    private static string Guarded(string cell) => Formula(cell.TrimStart('\'')) ? "'" + cell : cell;

    private static string Plain(string cell) => cell.StartsWith('\'') && Formula(cell.TrimStart('\'')) ? cell[1..] : cell;
}
