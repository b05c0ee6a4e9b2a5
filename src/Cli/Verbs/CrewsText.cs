using System.Globalization;
using Umpirage.District.Crews;
using Umpirage.Solve.Crews;

namespace Umpirage.Cli.Verbs;

/// <summary>A found plan for the terminal.</summary>
internal static class CrewsText
{
    public static IEnumerable<string> Of(CrewResult result, CrewTask task, Forecast forecast, bool saved)
    {
        var required = task.Games.Sum(g => g.Division.Crew);
        yield return string.Create(CultureInfo.InvariantCulture, $"{task.Games.Count} games, {required} places required: {required - result.Required.Count()} filled, {result.Required.Count()} open; {result.Seconds:0.0} s{(result.Stopped ? "; stopped before the last priority, this is the last good plan" : "")}");
        foreach (var stage in result.Stages) yield return string.Create(CultureInfo.InvariantCulture, $"  {stage.InWords} ({stage.Seconds:0.0} s)");
        var (safety, rules) = (result.Recounted.Count(b => b.Hold == Hold.Safety), result.Recounted.Count(b => b.Hold == Hold.Rule));
        yield return $"recounted: {safety} against safety, {rules} against rules, {result.Recounted.Count(b => b.Hold == Hold.Wish)} wishes not met";
        yield return $"{result.Changes.Count(c => c.From is not null)} places taken from somebody, {result.Changes.Count(c => c.From is null)} filled that were open";
        if (result.Open.Count > 0)
        {
            yield return $"when short: {result.Open.Count(o => !CrewPlace.IsRequired(o.Place))} youth bases dropped, {result.OneUmpire.Count()} games with one umpire, {result.NoUmpire.Count()} games without any";
            yield return $"no plan fills more than {forecast.Filled} of {forecast.Required} places of the whole week, by hours, grades and offers alone";
            foreach (var move in forecast.Moves.Take(3)) yield return string.Create(CultureInfo.InvariantCulture, $"  a two-umpire game moved from {move.From:ddd d MMM} to {move.To:ddd d MMM} fills {move.Gains} more");
            foreach (var night in result.Required.GroupBy(o => o.Game.Day))
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"open on {night.Key:ddd d MMM}:");
                foreach (var open in night) yield return $"  {open.InWords}";
            }
        }
        yield return saved ? "saved" : "not saved; add --save";
    }
}
