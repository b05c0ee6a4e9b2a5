using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;

namespace Umpirage.Solve.Crews;

/// <summary>Somebody who may have a place as far as that place alone goes.</summary>
internal sealed record Candidate(CrewGame Game, string Place, CrewPerson Person, int Wishes);

/// <summary>
/// Asks the check, place by place and pair by pair, what may be; the search itself knows no rule. What hangs on the rest of a crew (a mentor beside,
/// the only adult) is left to the model, and to the recount.
/// </summary>
internal sealed class Candidates
{
    private static readonly string[] WithinTheCrew = [new BesideTheMentor().Name];
    private static readonly CrewConstraint[] OnOneDay = [new OneGameAtATime(), new BreakBetween(), new TimeToTravel()];

    private readonly Dictionary<(string, string), bool> clashes = [];

    public Candidates(CrewTask task)
    {
        // the plan without the crews that are sought: other games of the day still count
        Empty = task.Plan.Without(task.Games).Settled();
        All = [.. task.Games.AsParallel().AsOrdered().WithDegreeOfParallelism(Math.Max(1, task.Workers)).SelectMany(g => Of(g))];
    }

    public CrewPlan Empty { get; }
    public IReadOnlyList<Candidate> All { get; }

    private IEnumerable<Candidate> Of(CrewGame game)
    {
        foreach (var place in CrewPlace.Of(game.Division))
            foreach (var person in Empty.Officials)
            {
                // most are out for their hours or grade: asked first, since it is quick
                var seat = new Seated(game, place, person);
                if (Quick.Any(c => c.Find(Empty, seat).Any(b => b.Hold != Hold.Wish))) continue;
                var plan = Empty.With(game, place, person);
                var wishes = 0;
                var may = true;
                foreach (var breach in CrewCheck.Of(plan, plan.CrewOf(game).First(s => s.Place == place)))
                {
                    if (breach.Hold == Hold.Wish) wishes++;
                    else if (!WithinTheCrew.Contains(breach.Constraint)) { may = false; break; }
                }
                if (may) yield return new(game, place, person, wishes);
            }
    }

    private static readonly CrewConstraint[] Quick = [new AvailableThen(), new GradeEnough(), new Certified(), new YouthPlaceForYouth()];

    /// <summary>Whether nobody can work both games: the same for everybody, so it is asked once.</summary>
    public bool Clash(CrewGame one, CrewGame other, CrewPerson person)
    {
        var key = string.CompareOrdinal(one.Key, other.Key) < 0 ? (one.Key, other.Key) : (other.Key, one.Key);
        if (clashes.TryGetValue(key, out var known)) return known;
        var plan = Empty.With(one, CrewPlace.Base, person).With(other, CrewPlace.Base, person);
        string[] both = [one.Key, other.Key];
        return clashes[key] = plan.Of(person).Where(s => both.Contains(s.Game.Key)).Any(s => OnOneDay.Any(c => c.Find(plan, s).Any(b => b.Hold != Hold.Wish)));
    }
}
