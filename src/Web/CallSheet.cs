using System.Globalization;
using Umpirage.District.Crews;

namespace Umpirage.Web;

/// <summary>A call for substitutes as it was typed: who is missing, what time it is, whom somebody has on the phone and how far away each is.</summary>
/// <param name="Plan">Without those who are missing.</param>
/// <param name="Now">The district's clock; nothing while the game is hours away.</param>
/// <param name="Minutes">As typed, by person; nothing where somebody is on the phone and did not say.</param>
/// <param name="ReachedOnly">Nobody else is asked.</param>
public sealed record CallSheet(CrewPlan Plan, CrewGame Game, IReadOnlyList<string> Missing, DateTime? Now, IReadOnlyDictionary<string, int?> Minutes, bool ReachedOnly, IReadOnlyList<string> Faults)
{
    public const string MinutesOf = "min-";
    private const int MostNames = 60, HoursBefore = 3;

    public static CallSheet Of(CrewPlan plan, CrewGame game, IQueryCollection query, DateTime clock, IEnumerable<string> heatFaults)
    {
        var faults = heatFaults.ToList();
        var places = query.ContainsKey("asked") ? [.. query["missing"].OfType<string>().Where(CrewPlace.Of(game.Division).Contains)] : plan.Open(game);
        var missing = places.Aggregate(plan, (p, place) => p.With(game, place, null));
        var minutes = new Dictionary<string, int?>(Reached.Read(plan, Typed.Cut(query["names"], 600), faults));
        foreach (var (name, value) in query.Where(q => q.Key.StartsWith(MinutesOf, StringComparison.Ordinal)).Take(MostNames))
        {
            var key = name[MinutesOf.Length..];
            if (plan.Person(key) is not { Official: not null } person || minutes.ContainsKey(key)) continue;
            var typed = Typed.Cut(value, 20);
            minutes[key] = Reached.Minutes(typed);
            if (typed != "" && minutes[key] is null) faults.Add($"{person.Name}: found '{typed}'; allowed is whole minutes from 0 to {Reached.Longest}");
        }
        var shown = (clock >= game.Start.AddHours(-HoursBefore) && clock < game.End) ? clock : (DateTime?)null;
        return new(missing, game, places, Read(game, query["now"], faults) ?? shown, minutes, query["who"] != "all" && minutes.Count > 0, faults);
    }

    private static DateTime? Read(CrewGame game, string? typed, List<string> faults)
    {
        if (string.IsNullOrWhiteSpace(typed)) return null;
        if (TimeOnly.TryParseExact(typed.Trim(), ["H:mm", "HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)) return game.Start.Date.Add(time.ToTimeSpan());
        faults.Add($"time now: found '{Typed.Cut(typed, 20)}'; allowed is a time of day written 17:40");
        return null;
    }

    public Calling Calling => new(Now, Minutes.Where(m => m.Value is not null).ToDictionary(m => m.Key, m => m.Value!.Value), ReachedOnly ? Minutes.Keys.ToHashSet() : null);

    /// <summary>Whom to call for the places that the division requires.</summary>
    public CallUp Call => CallUp.Of(Plan, Game, Calling, Missing);

    /// <summary>Who might take a place that is wanted only; the game goes on without.</summary>
    public IReadOnlyList<Substitute> Wanted(string place) => Subs.For(Plan, Game, place, Calling);
}
