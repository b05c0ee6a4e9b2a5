using System.Globalization;
using Umpirage.District.Options;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Store.Files;

public sealed class LayerFile : FileKind
{
    public override string Name => "layers";
    public override string About => "Local options, each as the text of a .layer file. What is published under a version never changes.";
    public override IReadOnlyList<Column> Columns =>
    [
        new("layer", true, "its name, as Tarnholt"), new("version", true, "1, 2, 3"), new("status", true, "proposed or published"), new("league", false, "key of the league it belongs to"),
        new("by", true, "who proposed or published it"), new("at", true, "when, UTC: 2026-02-01T12:00:00"), new("text", true, "the layer, with its line ends"),
    ];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var layer = row.Key("layer");
        var league = row.Text("league");
        if (league != "") row.Known("league", league, known.Leagues, "league");
        var text = row.AsWritten("text", 100_000).ReplaceLineEndings("\n");
        if (text.Trim() == "") row.Needed("text", "the layer, with its line ends");
        var option = new LocalOption(layer, row.Whole("version", 1, 10_000), row.Choice<OptionStatus>("status", s => s.ToString().ToLowerInvariant()), league, text, row.Needed("by", "who proposed it"), At(row));
        // a file tells the time to the second; one who reads it back has not changed the rest
        var before = layer == "" ? null : known.Store.Options.Find(layer, option.Version);
        if (before is not null && WholeSecond.Of(before.At) == option.At) option = option with { At = before.At };
        if (known.Book is { } book && text.Trim() != "")
        {
            var findings = new List<Finding>();
            var read = LayerReader.Read(layer, text, book.Roster, findings);
            if (read.Name != "" && !Words.Same(read.Name, layer)) row.Fault("text", $"Layer: {read.Name}", $"a text that begins 'Layer: {layer}'");
            foreach (var finding in findings) row.Fault("text", $"line {finding.Line}", $"the text of a layer ({finding.Message})");
        }
        if (before is { Status: OptionStatus.Published } && before.Text != text)
            row.Fault("version", option.Version.ToString(CultureInfo.InvariantCulture), "a new version: this one is published and does not change");
        return [option];
    }

    private static DateTime At(Row row)
    {
        var text = row.Text("at");
        if (DateTime.TryParseExact(text, "yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at)) return at;
        row.Fault("at", text, "a time in UTC written 2026-02-01T12:00:00");
        return DateTime.UnixEpoch;
    }

    public override string Owner(object record) => record is LocalOption o ? $"{o.Layer}/{o.Version}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Options;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Options.AsEnumerable().OrderBy(o => o.Layer, StringComparer.Ordinal).ThenBy(o => o.Version).Select(o => new[]
        {
            o.Layer, o.Version.ToString(CultureInfo.InvariantCulture), o.Status.ToString().ToLowerInvariant(), o.League, o.By, o.At.ToString("yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture), o.Text,
        });
}
