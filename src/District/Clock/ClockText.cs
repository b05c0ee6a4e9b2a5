using System.Globalization;
using System.Text;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>Lays an answer out for a terminal, most wanted first.</summary>
public static class ClockText
{
    public static string Of(ClockReading r)
    {
        var text = new StringBuilder().AppendLine(CultureInfo.InvariantCulture, $"AT {r.At}: {State(r)}, {r.Half}{(r.Score is { } score ? $", {score}" : "")}");
        Part(text, "DO NOW", r.DoNow);
        Part(text, "WRONG IN WHAT HAPPENED", r.Alerts);
        Part(text, "CLOCK", Clock(r.Limit));
        Part(text, "STORM", Storm(r.Storm));
        Part(text, "DARK", [r.Dark.At is { } dark ? $"{dark}, {Left(r.Dark.Minutes!.Value)}{(r.Dark.MinutesAtRestart is { } then && then != r.Dark.Minutes ? $"; {Left(then)} at the earliest restart" : "")}" : "no cut-off", r.Dark.Because]);
        foreach (var heat in r.Heat) Part(text, "HEAT", Heat(heat));
        Part(text, "IF STOPPED FOR GOOD NOW", [$"official game: {Words.Or(r.IfStoppedNow.Official)}", .. r.IfStoppedNow.Score.Count > 0 ? r.IfStoppedNow.Score : r.IfStoppedNow.Ruling.Ruling]);
        Part(text, "TO NOTE", r.ToNote);
        Part(text, "SOURCE", [.. r.Sources, .. r.IfStoppedNow.Ruling.Sources.Concat(r.Storm.Ruling?.Sources ?? []).Concat(r.Limit.Ruling?.Sources ?? []).Distinct()]);
        Part(text, "CAUTION", r.Cautions);
        return text.AppendLine().AppendLine(r.Code).ToString();
    }

    public static string Of(HeatAnswer answer)
    {
        var text = new StringBuilder().AppendLine(CultureInfo.InvariantCulture, $"{answer.Measure.ToUpperInvariant()} {answer.Fahrenheit:0.0} F: {answer.Band}");
        Part(text, "HOW", [answer.Shown, answer.ToNext ?? "in the highest band"]);
        Part(text, "RULING", answer.Ruling.Ruling);
        if (answer.Ruling.AskNext is { } ask) Part(text, "ASK NEXT", [ask]);
        Part(text, "WHY", answer.Ruling.Why);
        Part(text, "DO NOW", answer.Ruling.DoNow);
        Part(text, "SOURCE", answer.Ruling.Sources);
        Part(text, "CAUTION", [answer.Limits, .. answer.Cautions, Cautions.Advice]);
        return text.AppendLine().AppendLine(answer.Code).ToString();
    }

    public static string Of(SunAnswer answer)
    {
        var text = new StringBuilder().AppendLine(CultureInfo.InvariantCulture, $"{answer.Date} at {answer.Place}");
        foreach (var line in answer.Events) text.AppendLine(CultureInfo.InvariantCulture, $"  {line.Name,-10}  {(line.At is { } at ? $"{at}   {at.Exact}" : line.WhyNot)}");
        if (answer.Stands is { } sun) text.AppendLine(CultureInfo.InvariantCulture, $"  at {answer.At}    azimuth {sun.Azimuth:0.00} degrees from north, elevation {sun.Elevation:0.00} degrees, refraction not counted");
        Part(text, "CAUTION", [.. answer.Cautions, "Sunrise and sunset: centre of the sun at -0.833 degrees; civil dawn and dusk at -6 (Almanac for Computers, US Naval Observatory, 1990)."]);
        return text.ToString();
    }

    private static string State(ClockReading r) => r.State switch { PlayState.NotStarted => "not started", PlayState.Playing => "play goes on", PlayState.Stopped => "play is stopped", _ => "stopped for good" };

    private static IReadOnlyList<string> Clock(LimitReading limit)
    {
        if (limit.Started is null) return [limit.NoNewInningAfter is { } after ? $"not started; {(limit.OneMoreInning ? "finish the inning and one more after" : "no new inning after")} {after} min" : "not started; no time limit"];
        List<string> lines = [$"started {limit.Started}; {limit.OnClock} min on the clock, {limit.Played} min played"];
        if (limit.NoNewInningAfter is { } max)
            lines.Add($"{(limit.OneMoreInning ? "finish the inning and one more after" : "no new inning after")} {(limit.LastNewInning is { } last ? last.Clock : $"{max} min, which were not reached")}{(limit.Assuming is { } assuming ? ", " + assuming : "")}: {(limit.Left >= 0 ? $"{limit.Left} of {max} min left" : $"{-limit.Left} min over {max}")}");
        else lines.Add("no limit on new innings");
        if (limit.HardStop is { } hard) lines.Add($"hard stop at {hard}{(limit.Assuming is { } same ? ", " + same : "")}");
        return lines;
    }

    private static IReadOnlyList<string> Storm(StormReading storm)
    {
        if (storm.EarliestRestart is not { } restart) return ["nothing heard, seen or ordered"];
        List<string> lines = [$"{(storm.LastSign is { } sign ? $"last sign {sign}; " : "")}restart not before {restart}{(storm.MustBeStopped ? "" : " (past)")}"];
        if (storm.Ruling is { } ruling) lines.Add(string.Join("; ", ruling.Ruling));
        return lines;
    }

    private static List<string> Heat(HeatAnswer heat) =>
        [$"{heat.Measure} {Degrees.Tell(heat.Fahrenheit)} F, {heat.Band}", heat.Shown, heat.ToNext ?? "in the highest band", .. heat.Ruling.Ruling];

    private static string Left(int minutes) => minutes >= 0 ? $"{minutes} min left" : $"{-minutes} min ago";

    private static void Part(StringBuilder text, string title, IReadOnlyList<string> lines)
    {
        if (lines.Count == 0) return;
        text.AppendLine().AppendLine(title);
        foreach (var line in lines) text.AppendLine(CultureInfo.InvariantCulture, $"  {line}");
    }
}
