using System.Globalization;
using Umpirage.District.People;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>Reads which certificates there are; every fault at once.</summary>
public static class CertificateReader
{
    private const string Form = "write 'unit ID: title | 400 days', 'certificate ID: title', and under it code, position, units, questions, forms, cut by judges, good for";

    private sealed class Draft(string id, string title, int line)
    {
        public string Id { get; } = id;
        public string Title { get; } = title;
        public int Line { get; } = line;
        public Dictionary<string, (string Text, int Line)> Said { get; } = [];
    }

    private static readonly string[] Parts = ["code", "position", "units", "questions", "forms", "cut by judges", "good for"];

    /// <summary>The units and kinds; null, with every fault, when something cannot be read.</summary>
    public static CertificateBook? Read(string file, string text, Codebook book, List<Finding> findings)
    {
        var before = findings.Count;
        var (units, drafts) = (new List<ContentUnit>(), new List<Draft>());
        void Fault(int line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line, message));
        foreach (var line in SourceLine.Of(text))
        {
            var colon = line.Text.IndexOf(':');
            var (key, rest) = colon < 0 ? (line.Text, "") : (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim());
            if (key.StartsWith("unit ", StringComparison.Ordinal))
            {
                if (rest.Split('|') is [var title, var days] && Days(days) is { } good) units.Add(new(key[5..].Trim(), title.Trim(), good));
                else Fault(line.Number, $"cannot read '{line.Short}'; write 'unit ID: title | 400 days'");
            }
            else if (key.StartsWith("certificate ", StringComparison.Ordinal)) drafts.Add(new(key[12..].Trim(), rest, line.Number));
            else if (drafts.Count > 0 && Parts.Contains(key)) { if (!drafts[^1].Said.TryAdd(key, (rest, line.Number))) Fault(line.Number, $"'{key}' is given a second time"); }
            else Fault(line.Number, $"cannot read '{line.Short}'; {Form}");
        }
        List<CertificateKind> kinds = [.. drafts.Select(d => Kind(d, units, book, Fault)).OfType<CertificateKind>()];
        return findings.Count > before ? null : new(units, kinds);
    }

    private static CertificateKind? Kind(Draft draft, List<ContentUnit> units, Codebook book, Action<int, string> fault)
    {
        List<string> missing = [.. Parts.Where(p => !draft.Said.ContainsKey(p))];
        if (missing.Count > 0) { fault(draft.Line, $"the certificate '{draft.Id}' has no {Words.And(missing)}"); return null; }
        var fine = true;
        void Wrong(string part, string message) { fine = false; fault(draft.Said[part].Line, message); }
        string Said(string part) => draft.Said[part].Text;
        var groups = book.Sheets.Select(s => s.Group).Distinct().Order(StringComparer.Ordinal).ToList();
        if (CodeAddress.Read(Said("code")) is null) Wrong("code", $"'{Said("code")}' is not a code; write {CodeAddress.Form}");
        if (!Enum.TryParse<Position>(Said("position"), true, out var position) || !Enum.IsDefined(position)) Wrong("position", $"'position' is '{Said("position")}'; allowed is {Words.Or([.. Enum.GetNames<Position>().Select(n => n.ToLowerInvariant())])}");
        var needed = new List<ContentUnit>();
        foreach (var name in Said("units").Split(',').Select(u => u.Trim()))
            if (units.FirstOrDefault(u => Words.Same(u.Id, name)) is { } unit) needed.Add(unit); else Wrong("units", $"there is no unit '{name}'; {Words.Offer(name, [.. units.Select(u => u.Id)])}");
        var questions = new List<(string, int)>();
        foreach (var part in Said("questions").Split(',').Select(q => q.Trim()))
        {
            var space = part.LastIndexOf(' ');
            if (space < 0 || !int.TryParse(part[(space + 1)..], out var count) || count is < 1 or > 50) Wrong("questions", $"cannot read '{part}'; write a group and a number from 1 to 50: 'running 6'");
            else if (!groups.Contains(part[..space].Trim())) Wrong("questions", $"there is no group '{part[..space].Trim()}'; {Words.Offer(part[..space].Trim(), groups)}");
            else questions.Add((part[..space].Trim(), count));
        }
        if (!int.TryParse(Said("forms"), out var forms) || forms is < 1 or > 20) Wrong("forms", $"'forms' is '{Said("forms")}'; allowed is a whole number from 1 to 20");
        var judged = new List<double>();
        foreach (var mark in Said("cut by judges").Split(',').Select(m => m.Trim()))
            if (double.TryParse(mark, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent) && percent is >= 30 and <= 100) judged.Add(percent);
            else Wrong("cut by judges", $"a judge's cut is '{mark}'; allowed is a percentage from 30 to 100");
        if (Days(Said("good for")) is not { } good) { Wrong("good for", $"'good for' is '{Said("good for")}'; allowed are 1 to 4000 days: '365 days'"); return null; }
        return fine ? new(draft.Id, draft.Title, Said("code"), position, needed, questions, forms, judged, good) : null;
    }

    private static int? Days(string text) => Quantity.TryRead(text.Trim(), out var quantity) && quantity.Unit == "days" && quantity.Value is >= 1 and <= 4000 && quantity.Value == Math.Floor(quantity.Value) ? (int)quantity.Value : null;
}
