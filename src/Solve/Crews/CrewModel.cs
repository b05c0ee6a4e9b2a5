using Google.OrTools.Sat;
using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;
using Umpirage.District.People;

namespace Umpirage.Solve.Crews;

/// <summary>The search as a constraint model: a yes or no for every candidate and place, holes allowed everywhere.</summary>
internal sealed class CrewModel
{
    private readonly Dictionary<(string Game, string Place), List<(Candidate Who, BoolVar Var)>> byPlace = [];
    private readonly Dictionary<(string Game, string Person), List<BoolVar>> byGame = [];

    public CpModel Model { get; } = new();
    public IReadOnlyList<(Candidate Who, BoolVar Var)> Seats { get; }
    public IReadOnlyDictionary<(string Game, string Place), BoolVar> Holes { get; }
    public ILookup<string, (Candidate Who, BoolVar Var)> ByPerson { get; }

    public CrewModel(CrewTask task, Candidates candidates)
    {
        Seats = [.. candidates.All.Select(c => (c, Model.NewBoolVar($"{c.Game.Key}/{c.Place}/{c.Person.Key}")))];
        ByPerson = Seats.ToLookup(s => s.Who.Person.Key);
        foreach (var seat in Seats)
        {
            Add(byPlace, (seat.Who.Game.Key, seat.Who.Place), seat);
            Add(byGame, (seat.Who.Game.Key, seat.Who.Person.Key), seat.Var);
        }
        var holes = new Dictionary<(string, string), BoolVar>();
        foreach (var game in task.Games)
            foreach (var place in CrewPlace.Of(game.Division))
            {
                var hole = holes[(game.Key, place)] = Model.NewBoolVar($"open {game.Key}/{place}");
                Model.AddExactlyOne([hole, .. At(game.Key, place).Select(s => s.Var)]);
            }
        Holes = holes;
        foreach (var own in byGame.Values.Where(v => v.Count > 1)) Model.AddAtMostOne(own);
        foreach (var person in ByPerson) Week(task, candidates, person.First().Who.Person, [.. person]);
        foreach (var game in task.Games) Crew(task.Plan, game);
    }

    public IReadOnlyList<(Candidate Who, BoolVar Var)> At(string game, string place) => byPlace.GetValueOrDefault((game, place), []);

    private IReadOnlyList<BoolVar> In(string game, string person) => byGame.GetValueOrDefault((game, person), []);

    private static void Add<TKey, T>(Dictionary<TKey, List<T>> map, TKey key, T value) where TKey : notnull
    {
        if (!map.TryGetValue(key, out var list)) map[key] = list = [];
        list.Add(value);
    }

    private void Week(CrewTask task, Candidates candidates, CrewPerson person, IReadOnlyList<(Candidate Who, BoolVar Var)> own)
    {
        foreach (var week in own.GroupBy(s => AsOffered.Monday(s.Who.Game.Day)))
        {
            var has = candidates.Empty.Of(person).Count(s => AsOffered.Monday(s.Game.Day) == week.Key);
            var offered = (int)Math.Floor(person.Official!.GamesAWeek) - has;
            Model.Add(LinearExpr.Sum(week.Select(s => s.Var)) <= Math.Max(0, offered));
        }
        foreach (var day in own.GroupBy(s => s.Who.Game.Day))
        {
            var already = candidates.Empty.DayOf(person, day.Key);
            // the strictest of the day's codes: a plan that keeps it keeps them all
            var (games, plates) = (day.Min(s => s.Who.Game.Code.GamesADay(person.Person.Band)), day.Min(s => s.Who.Game.Code.PlatesADay(task.Plan.HeatOn(day.Key))));
            var all = day.Select(s => s.Var).ToList();
            if (all.Count > games - already.Count) Model.Add(LinearExpr.Sum(all) <= Math.Max(0, games - already.Count));
            var plate = day.Where(s => s.Who.Place == CrewPlace.Plate).Select(s => s.Var).ToList();
            var platesLeft = plates - already.Count(g => g.IsPlate);
            if (plate.Count > platesLeft) Model.Add(LinearExpr.Sum(plate) <= Math.Max(0, platesLeft));
            Apart(candidates, person, [.. day.Select(s => s.Who.Game).DistinctBy(g => g.Key).OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal)]);
        }
    }

    /// <summary>Games that clash exclude each other: whole sets at once where all of a set clash, which binds a relaxation far more than pairs do.</summary>
    private void Apart(Candidates candidates, CrewPerson person, IReadOnlyList<CrewGame> games)
    {
        var covered = new HashSet<(int, int)>();
        for (var i = 0; i < games.Count; i++)
            for (var j = i + 1; j < games.Count; j++)
            {
                if (covered.Contains((i, j)) || !candidates.Clash(games[i], games[j], person)) continue;
                List<int> set = [i, j];
                for (var k = i + 1; k < games.Count; k++)
                    if (k != j && set.All(s => candidates.Clash(games[s], games[k], person))) set.Add(k);
                foreach (var a in set) foreach (var b in set) if (a < b) covered.Add((a, b));
                Model.AddAtMostOne(set.SelectMany(s => In(games[s].Key, person.Key)));
            }
    }

    private void Crew(CrewPlan plan, CrewGame game)
    {
        var people = CrewPlace.Of(game.Division).SelectMany(p => At(game.Key, p)).Select(s => s.Who.Person).DistinctBy(p => p.Key).ToDictionary(p => p.Key);
        foreach (var person in people.Values)
        {
            foreach (var pair in person.Pairings.Where(p => p.Person == person.Key && p.From <= game.Day && game.Day <= p.Until && p.Kind == PairingKind.Apart && people.ContainsKey(p.Other)))
                Model.AddAtMostOne([.. In(game.Key, person.Key), .. In(game.Key, pair.Other)]);
            var mentors = person.Pairings.Where(p => p.Person == person.Key && p.From <= game.Day && game.Day <= p.Until && p.Kind == PairingKind.Mentor).Select(p => p.Other).ToList();
            if (mentors.Count > 0) Model.Add(LinearExpr.Sum(In(game.Key, person.Key)) <= LinearExpr.Sum(mentors.SelectMany(m => In(game.Key, m))));
        }
        // the coordinator is another than the umpires wherever a minor is among them
        if (game.Coordinator is { } named && people.ContainsKey(named.Key))
            foreach (var minor in people.Values.Where(p => p.IsMinor)) Model.AddAtMostOne([.. In(game.Key, named.Key), .. In(game.Key, minor.Key)]);
    }
}
