using Umpirage.District.Fits;

namespace Umpirage.District.Clinic;

/// <summary>What is known about mastery: how likely the ability is above the mark, and whether that is certain enough either way.</summary>
public sealed record Judged(bool Certain, bool Mastered, double Chance, int Questions);

/// <summary>
/// Asks until mastery is certain, one way or the other: always with the questions that tell most just at the mark, for there the decision falls (Spray and
/// Reckase 1996; from memory).
/// </summary>
public sealed class Mastery
{
    private readonly int[] order;

    /// <param name="items">The questions by their places.</param>
    /// <param name="mark">The ability that counts as mastery.</param>
    public Mastery(IReadOnlyList<Item> items, double mark) =>
        order = [.. Enumerable.Range(0, items.Count).OrderByDescending(i => items[i].Information(mark)).ThenBy(i => i)];

    /// <summary>
    /// The place of the next question; null when all are used. <paramref name="turn"/> picks <paramref name="among"/> the best few, so that not everybody is
    /// asked the same.
    /// </summary>
    public int? Next(IReadOnlySet<int> used, int turn, int among = 4)
    {
        List<int> best = [.. order.Where(i => !used.Contains(i)).Take(among)];
        return best.Count == 0 ? null : best[(int)((uint)turn % best.Count)];
    }

    /// <summary>Whether it is certain by now, and what.</summary>
    public static Judged Judge(Belief belief, double mark, double certainty, int questions)
    {
        var chance = belief.Above(mark);
        return new(chance >= certainty || chance <= 1 - certainty, chance >= 0.5, chance, questions);
    }
}
