using Umpirage.District.Calendar;

namespace Umpirage.District.Crews;

/// <summary>Crews as people were last told of them, and how what stands now differs.</summary>
public sealed class Published
{
    private readonly Dictionary<(string Game, string Place), PublishedPlace> latest;
    private readonly HashSet<string> games;

    private Published(IEnumerable<PublishedPlace> lines)
    {
        latest = lines.GroupBy(l => (l.Game, l.Place)).ToDictionary(g => g.Key, g => g.MaxBy(l => l.At)!);
        games = [.. latest.Keys.Select(k => k.Game)];
    }

    public static Published Of(IEnumerable<PublishedPlace> lines) => new(lines);

    public bool Has(string game) => games.Contains(game);
    public IEnumerable<PublishedPlace> Places => latest.Values;
    public PublishedPlace? Find(string game, string place) => latest.GetValueOrDefault((game, place));

    /// <summary>Every place of these games that differs from what was told, or was never told of; places that nobody has to hear of among them.</summary>
    /// <param name="at">UTC: when it would be told.</param>
    public IReadOnlyList<PlaceChange> Against(CrewRecords records, IEnumerable<ScheduledGame> asked, DateTime at)
    {
        var divisions = records.Divisions.ToDictionary(d => d.Key);
        var seats = records.Assignments.ToLookup(a => a.Game);
        var changes = new List<PlaceChange>();
        foreach (var game in asked.OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal))
        {
            var known = latest.Keys.Where(k => k.Game == game.Key).Select(k => k.Place);
            foreach (var place in CrewPlace.Of(divisions[game.Division]).Union(seats[game.Key].Where(a => a.Person is not null).Select(a => a.Place)).Union(known))
            {
                var person = game.IsAhead || game.Status == GameStatus.Played ? seats[game.Key].FirstOrDefault(a => a.Place == place)?.Person : null;
                var now = new PublishedPlace(game.Key, place, at, person, game.Diamond, game.Start);
                var was = Find(game.Key, place);
                if (was is null || !was.Tells(now)) changes.Add(new(was, now));
            }
        }
        return changes;
    }

    /// <summary>Places as umpires know them: of a game that lies ahead what was published of it, of one that began what is on record.</summary>
    /// <param name="now">The district's clock.</param>
    public IEnumerable<Assignment> Known(IEnumerable<ScheduledGame> of, IEnumerable<Assignment> onRecord, DateTime now)
    {
        var begun = of.ToLookup(g => g.Start <= now, g => g.Key);
        var (past, ahead) = (begun[true].ToHashSet(), begun[false].ToHashSet());
        return onRecord.Where(a => past.Contains(a.Game)).Concat(Places.Where(p => ahead.Contains(p.Game)).Select(p => new Assignment(p.Game, p.Place, p.Person)));
    }

    /// <summary>The plan with the crews of published games ahead as people were told of them: what a search changes as little as it can.</summary>
    public static CrewPlan Standing(CrewPlan plan)
    {
        if (plan.Records.Published.Count == 0) return plan;
        var told = Of(plan.Records.Published);
        return plan.Without(plan.Games.Where(g => g.Game.IsAhead && told.Has(g.Key)))
            .With(told.Places.Where(p => p.Person is not null).Select(p => (plan.Game(p.Game), p.Place, plan.Person(p.Person!))).Where(s => s.Item1 is { Game.IsAhead: true } && s.Item3 is not null).Select(s => (s.Item1!, s.Place, s.Item3!)));
    }
}
