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

    /// <summary>Rows as header → cell. Faults of the file as such: encoding, headers, quoting.</summary>
    public static List<IReadOnlyDictionary<string, string>> Read(byte[] bytes, IReadOnlyList<Column> columns, List<FileFault> faults)
    {
        var rows = new List<IReadOnlyDictionary<string, string>>();
        if (bytes.Length > Largest) { faults.Add(new(1, "", $"{bytes.Length} bytes", $"at most {Largest} bytes")); return rows; }
        string text;
        try { text = Strict.GetString(bytes).TrimStart('\uFEFF'); }
        catch (DecoderFallbackException) { faults.Add(new(1, "", "bytes that are not UTF-8", "a file saved as CSV UTF-8")); return rows; }
        if (text.Contains('\0')) { faults.Add(new(1, "", "a zero byte", "text")); return rows; }
        var settings = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            MaxFieldSize = 200_000, IgnoreBlankLines = true,
            BadDataFound = args => faults.Add(new(args.Context.Parser?.Row ?? 1, "", args.RawRecord.Trim(), "quotes around a whole cell, doubled inside it")),
        };
        using var parser = new CsvParser(new StringReader(text), settings);
        try
        {
            if (!parser.Read()) { faults.Add(new(1, "", "", $"a header row: {string.Join(",", columns.Select(c => c.Header))}")); return rows; }
            var headers = parser.Record!.Select(h => h.Trim()).ToArray();
            Headers(headers, columns, faults);
            if (faults.Count > 0) return rows;
            while (parser.Read())
            {
                var cells = parser.Record!;
                if (cells.All(c => c.Trim() == "")) continue;
                if (cells.Length != headers.Length) { faults.Add(new(rows.Count + 2, "", $"{cells.Length} cells", $"{headers.Length}, as many as headers")); if (faults.Count > 1000) return rows; }
                if (rows.Count >= MostRows) { faults.Add(new(rows.Count + 2, "", "more rows", $"at most {MostRows} rows in a file")); return rows; }
                var row = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
                for (var i = 0; i < Math.Min(cells.Length, headers.Length); i++) row[headers[i]] = Plain(cells[i]);
                rows.Add(row);
            }
        }
        catch (CsvHelperException fault)
        {
            faults.Add(new(parser.Row, "", fault.GetType().Name, "comma-separated text"));
        }
        return rows;
    }

    private static void Headers(string[] headers, IReadOnlyList<Column> columns, List<FileFault> faults)
    {
        List<string> known = [.. columns.Select(c => c.Header)];
        foreach (var header in headers.Where(h => !known.Contains(h, StringComparer.OrdinalIgnoreCase)))
            faults.Add(new(1, header, header, $"one of the headers; {Rules.Ground.Words.Offer(header, known)}"));
        foreach (var twice in headers.GroupBy(h => h, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1)) faults.Add(new(1, twice.Key, $"{twice.Count()} times", "each header once"));
        foreach (var missing in columns.Where(c => c.Needed && !headers.Contains(c.Header, StringComparer.OrdinalIgnoreCase))) faults.Add(new(1, missing.Header, "", $"a column '{missing.Header}': {missing.Meaning}"));
    }

    public static string Write(IReadOnlyList<Column> columns, IEnumerable<string?[]> rows)
    {
        var text = new StringWriter(CultureInfo.InvariantCulture);
        using var csv = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n" });
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

    private static bool Formula(string cell) =>
        cell.Length > 0 && (cell[0] is '=' or '@' or '\t' or '\r' || (cell[0] is '+' or '-' && (cell.Length == 1 || !char.IsAsciiDigit(cell[1]))));

    private static string Guarded(string cell) => Formula(cell) || (cell.StartsWith('\'') && Formula(cell[1..])) ? "'" + cell : cell;

    private static string Plain(string cell) => cell.StartsWith('\'') && Formula(cell.TrimStart('\'')) ? cell[1..] : cell;
}
