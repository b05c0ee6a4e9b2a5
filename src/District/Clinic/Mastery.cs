using Umpirage.District.Fits;

namespace Umpirage.District.Clinic;

/// <summary>What is known about mastery: how likely the ability is above the mark, and whether that is certain enough either way.</summary>
public sealed record Judged(bool Certain, bool Mastered, double Chance, int Questions);

/// <summary>Asks until mastery is certain, one way or the other, with the questions that tell most about it.</summary>
public static class Mastery
{
    /// <summary>
    /// The question, by its place, that tells most where the doubt lies: between what is believed and the mark. <paramref name="turn"/> picks among the best few, so
    /// that not everybody is asked the same. Null when all are used.
    /// </summary>
    public static int? MostTelling(IReadOnlyList<Item> items, Belief belief, double mark, IReadOnlySet<int> used, int turn, int among = 4)
    {
        var ability = belief.Ability;
        var at = Math.Clamp(mark, ability.Mean - ability.Error, ability.Mean + ability.Error);
        Span<int> best = stackalloc int[among];
        Span<double> told = stackalloc double[among];
        var count = 0;
        for (var i = 0; i < items.Count; i++)
        {
            if (used.Contains(i)) continue;
            var information = items[i].Information(at);
            if (count == among && information <= told[^1]) continue;
            var place = count < among ? count++ : among - 1;
            while (place > 0 && told[place - 1] < information) { (told[place], best[place]) = (told[place - 1], best[place - 1]); place--; }
            (told[place], best[place]) = (information, i);
        }
        return count == 0 ? null : best[(int)((uint)turn % count)];
    }

    /// <summary>Whether it is certain by now, and what.</summary>
    public static Judged Judge(Belief belief, double mark, double certainty, int questions)
    {
        var chance = belief.Above(mark);
        return new(chance >= certainty || chance <= 1 - certainty, chance >= 0.5, chance, questions);
    }
}
