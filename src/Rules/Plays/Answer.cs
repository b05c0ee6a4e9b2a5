using System.Text;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>A ruling made ready to be read out: the ruling, why, what would change it, and how others rule it.</summary>
public sealed record Answer(
    string Sheet, string Code, IReadOnlyList<string> Layers, bool Ruled, IReadOnlyList<string> Ruling, IReadOnlyList<string> TakenAsUsual, IReadOnlyList<string> Why, IReadOnlyList<string> Sources,
    IReadOnlyList<string> Unverified, IReadOnlyList<string> WouldChange, IReadOnlyList<string> DoNow, string Log, IReadOnlyList<string> After, string? AskNext, IReadOnlyList<Elsewhere> Elsewhere)
{
    /// <param name="after">The game after the ruling, or both sides of a choice, in words.</param>
    public static Answer Of(Ruling ruling, IReadOnlyList<Elsewhere> elsewhere, IReadOnlyList<string> after)
    {
        var sheet = ruling.Table.Sheet;
        var steps = Because.Of(ruling);
        List<string> lines = ruling.IsPossible
            ? [.. ruling.Announced.Select(d => d.Values.Count == 1 ? d.InWords : $"{d.Term.Name}: still possible {Words.Or(d.Values)}")]
            : [.. ruling.Impossible.Select(i => $"this cannot be: {i}")];
        List<string> why = [.. steps.GroupBy(s => s.Rule).Select(g => Tell([.. g]))];
        List<string> sources = [.. steps.SelectMany(s => s.Taken is { } t ? new[] { s.Source.ToString(), $"{t.Value}: {t.Layer}, {t.Citation}" } : [s.Source.ToString()]).Distinct()];
        var next = ruling.IsPossible && !ruling.IsRuled ? Questions.Next(ruling.Table, ruling.Situation) : null;
        return new(sheet.Bound.Sheet.Name, sheet.Code.Address.ToString(), [.. sheet.Code.LayerNames], ruling.IsRuled, lines, [.. ruling.TakenAsUsual.Select(f => $"{f.Name}: {f.Term.Usually}")], why, sources,
            Because.Unverified(steps), [.. WhatIf.Nearest(ruling).Select(c => c.InWords(ruling))],
            [.. steps.Select(s => s.Do).OfType<string>().Distinct()], LogLine(ruling), after,
            next is null ? null : $"{next.Term.Question} ({Words.Or(next.Values)})", elsewhere);
    }

    /// <summary>One line for the record: day, code, subject, ruling, deciding rules.</summary>
    private static string LogLine(Ruling ruling)
    {
        var code = ruling.Table.Sheet.Code;
        var rules = ruling.Announced.Where(d => d.Values.Count == 1 && d.By.Count > 0).Select(d => d.By[0].Id).Distinct();
        return $"{CodeAddress.Day(code.Date)} | {code.Address with { Date = null }} | {ruling.Table.Sheet.Bound.Sheet.Name} | {ruling.InWords} | {string.Join(" ", rules)}";
    }

    private static string Tell(IReadOnlyList<Step> steps)
    {
        var first = steps[0];
        var since = first.Since.Count == 0 ? "" : $" Since {Words.And(first.Since)}.";
        var reason = first.Reason is { } r ? " " + r : "";
        return $"{Words.Upper(first.Title)} [{first.Rule}]: {string.Join("; ", steps.Select(s => $"{s.Decision}: {s.Value}"))}.{since}{reason}";
    }

    /// <summary>The answer as text for a terminal, most wanted first.</summary>
    public string Text(string situation)
    {
        var text = new StringBuilder();
        if (situation != "") text.AppendLine(situation).AppendLine();
        text.AppendLine(Ruled ? "RULING" : Why.Count > 0 ? "RULING, AS FAR AS IT GOES" : "NOT YET RULED");
        foreach (var line in Ruling) text.AppendLine($"  {line}");
        if (AskNext is not null) text.AppendLine().AppendLine("ASK NEXT").AppendLine($"  {AskNext}");
        Part("TAKEN AS USUAL, SINCE NOBODY SPOKE OF IT", TakenAsUsual);
        Part("AFTER IT", After);
        Part("WHY", Why);
        Part("SOURCE", Sources);
        if (Unverified.Count > 0) text.AppendLine("  Not checked against a book; look it up before it decides a game.");
        Part("WHAT WOULD CHANGE IT", WouldChange);
        Part("DO NOW", DoNow);
        Part("LOG", Ruled ? [Log] : []);
        Part("ELSEWHERE", [.. Elsewhere.Where(e => !e.Same).Select(e => $"{e.Code}: {e.InWords}"), .. Elsewhere.Where(e => e.Same).Select(e => $"{e.Code}: the same")]);
        text.AppendLine().AppendLine($"{Sheet}; {Code}; {string.Join(" <- ", Layers)}");
        text.AppendLine("Advice from entered facts and a stated edition; the printed rule book and local authority rule.");
        return text.ToString();

        void Part(string title, IReadOnlyList<string> lines)
        {
            if (lines.Count == 0) return;
            text.AppendLine().AppendLine(title);
            foreach (var line in lines) text.AppendLine($"  {line}");
        }
    }
}
