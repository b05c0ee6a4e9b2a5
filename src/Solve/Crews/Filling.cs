using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;

namespace Umpirage.Solve.Crews;

/// <summary>
/// Fills places one after the other, the hardest first: plates before bases before youth bases, and among them those with the fewest candidates; then
/// by chains, where one moves over and another takes the place left. Not the answer, but a plan to begin with, and what a hurried search falls back on.
/// </summary>
internal sealed class Filling
{
    private static readonly CrewConstraint[] InTheCrew = [new KeptApart(), new BesideTheMentor(), new NeverOneAdult(), new AdultCoordinator()];

    private readonly CrewTask task;
    private readonly Candidates candidates;
    private readonly IReadOnlyList<Candidate> seats;
    private readonly bool[] taken;
    private readonly Dictionary<string, List<int>> ofPerson = [], ofGame = [];
    private readonly List<List<int>> places;
    private readonly Dictionary<(string, string), int> holder = [];
    private readonly Dictionary<(string, DateOnly), (int Week, int Day, int Plates)> fixedSeats = [];

    public Filling(CrewTask task, Candidates candidates, IReadOnlyList<Candidate> seats, bool[]? begun = null)
    {
        (this.task, this.candidates, this.seats, taken) = (task, candidates, seats, new bool[seats.Count]);
        places = [.. Enumerable.Range(0, seats.Count).GroupBy(i => (seats[i].Game.Key, seats[i].Place)).Select(g => g.ToList()).OrderBy(p => Rank(p[0])).ThenBy(p => p.Count).ThenBy(p => p[0])];
        if (begun is not null) for (var i = 0; i < begun.Length; i++) if (begun[i]) Put(i);
    }

    public bool[] Taken => taken;

    /// <summary>Plates, other required places and youth bases that are open, in the order in which they count.</summary>
    public Left Open => new([.. task.Games.SelectMany(g => CrewPlace.Of(g.Division).Where(p => !holder.ContainsKey((g.Key, p))))]);

    /// <summary>Published places that may stand, first.</summary>
    public Filling Keep()
    {
        var now = task.Games.SelectMany(task.Plan.CrewOf).Select(s => (s.Game.Key, s.Place, s.Person.Key)).ToHashSet();
        foreach (var place in places) foreach (var i in place) if (now.Contains((seats[i].Game.Key, seats[i].Place, seats[i].Person.Key)) && Fits(i)) Put(i);
        return this;
    }

    /// <summary>Those of the given seats that fit.</summary>
    public Filling Try(IEnumerable<int> given)
    {
        foreach (var i in given) if (Fits(i)) Put(i);
        return this;
    }

    /// <summary>Every open place to whoever fits and has had the smallest share of the offer.</summary>
    public Filling Fill()
    {
        foreach (var place in places.Where(IsOpen))
            foreach (var i in place.OrderBy(Share).ThenBy(i => seats[i].Wishes).ThenBy(i => seats[i].Person.Key, StringComparer.Ordinal)) if (Fits(i)) { Put(i); break; }
        return this;
    }

    /// <summary>One moves over and somebody free takes the place left; for a plate a base is given up where nobody can take it.</summary>
    public Filling Chain(CancellationToken stop)
    {
        foreach (var place in places.Where(IsOpen).ToList())
        {
            if (stop.IsCancellationRequested) return this;
            if (!Moved(place, giveUp: false) && Rank(place[0]) == 0) Moved(place, giveUp: true);
        }
        return this;
    }

    private bool Moved(List<int> place, bool giveUp)
    {
        foreach (var i in place)
            foreach (var own in ofPerson.GetValueOrDefault(seats[i].Person.Key, []).ToList())
            {
                if (giveUp && Rank(own) <= Rank(i)) continue;
                Drop(own);
                if (Fits(i))
                {
                    Put(i);
                    if (giveUp) return true;
                    foreach (var other in places.First(p => seats[p[0]].Game.Key == seats[own].Game.Key && seats[p[0]].Place == seats[own].Place))
                        if (other != own && Fits(other)) { Put(other); return true; }
                    Drop(i);
                }
                Put(own);
            }
        return false;
    }

    private bool IsOpen(List<int> place) => !holder.ContainsKey((seats[place[0]].Game.Key, seats[place[0]].Place));

    private int Rank(int i) => seats[i].Place == CrewPlace.Plate ? 0 : CrewPlace.IsRequired(seats[i].Place) ? 1 : 2;

    private double Share(int i) => (Fixed(seats[i]).Week + ofPerson.GetValueOrDefault(seats[i].Person.Key, []).Count) / Math.Max(0.5, seats[i].Person.Official!.GamesAWeek);

    private (int Week, int Day, int Plates) Fixed(Candidate seat)
    {
        if (fixedSeats.TryGetValue((seat.Person.Key, seat.Game.Day), out var known)) return known;
        var day = candidates.Empty.DayOf(seat.Person, seat.Game.Day);
        return fixedSeats[(seat.Person.Key, seat.Game.Day)] = (candidates.Empty.Of(seat.Person).Count(s => AsOffered.Monday(s.Game.Day) == AsOffered.Monday(seat.Game.Day)), day.Count, day.Count(g => g.IsPlate));
    }

    private bool Fits(int i)
    {
        var seat = seats[i];
        if (holder.ContainsKey((seat.Game.Key, seat.Place))) return false;
        var (week, day, plates) = Fixed(seat);
        foreach (var o in ofPerson.GetValueOrDefault(seat.Person.Key, []))
        {
            var other = seats[o];
            if (other.Game.Key == seat.Game.Key) return false;
            if (AsOffered.Monday(other.Game.Day) == AsOffered.Monday(seat.Game.Day)) week++;
            if (other.Game.Day != seat.Game.Day) continue;
            if (candidates.Clash(other.Game, seat.Game, seat.Person)) return false;
            day++;
            if (other.Place == CrewPlace.Plate) plates++;
        }
        if (week + 1 > seat.Person.Official!.GamesAWeek || day + 1 > seat.Game.Code.GamesADay(seat.Person.Person.Band)) return false;
        if (seat.Place == CrewPlace.Plate && plates + 1 > seat.Game.Code.PlatesADay(task.Plan.HeatOn(seat.Game.Day))) return false;
        return CrewFits(seat);
    }

    /// <summary>Most crews have nothing to mind among themselves; the others are asked of the constraints.</summary>
    private bool CrewFits(Candidate seat)
    {
        List<Candidate> crew = [seat, .. ofGame.GetValueOrDefault(seat.Game.Key, []).Select(o => seats[o])];
        if (crew.All(c => !c.Person.IsMinor && c.Person.Pairings.Count == 0)) return true;
        var plan = candidates.Empty.With(crew.Select(c => (c.Game, c.Place, c.Person)));
        return !plan.CrewOf(seat.Game).Any(s => InTheCrew.Any(c => c.Find(plan, s).Any(b => b.Hold != Hold.Wish)));
    }

    private void Put(int i)
    {
        taken[i] = true;
        holder[(seats[i].Game.Key, seats[i].Place)] = i;
        List(ofPerson, seats[i].Person.Key).Add(i);
        List(ofGame, seats[i].Game.Key).Add(i);
    }

    private void Drop(int i)
    {
        taken[i] = false;
        holder.Remove((seats[i].Game.Key, seats[i].Place));
        ofPerson[seats[i].Person.Key].Remove(i);
        ofGame[seats[i].Game.Key].Remove(i);
    }

    private static List<int> List(Dictionary<string, List<int>> map, string key) => map.TryGetValue(key, out var list) ? list : map[key] = [];
}
