using System.Numerics;
using Umpirage.Rules.Codes;

namespace Umpirage.Rules.Plays;

/// <summary>Chooses what to ask next: the fact whose answer is expected to settle most. Never asks what can no longer matter.</summary>
public static class Questions
{
    /// <summary>The best next fact to ask, or null when the play is ruled, or cannot be. Answers that cannot matter are not asked about.</summary>
    public static BoundTerm? Next(Table table, Situation situation, IReadOnlySet<int>? declined = null)
    {
        var sheet = table.Sheet;
        var lines = Umpire.Lines(table, situation).ToArray();
        var own = table.OwnDecisions;
        var outcome = Outcomes(lines, own, out var count);
        if (count <= 1) return null;
        var facts = sheet.FactCount;
        var weights = new double[lines.Length];
        for (var i = 0; i < lines.Length; i++)
        {
            // each answer to a question counts as equally likely
            var weight = 1.0;
            for (var t = 0; t < facts; t++)
                weight *= (double)BitOperations.PopCount(lines[i].Facts[t] & situation.Known[t]) / BitOperations.PopCount(situation.Known[t]);
            weights[i] = weight;
        }
        var (best, bestLeft) = (-1, Uncertainty(lines, weights, outcome, count, -1, 0, out _) - 1e-9);
        for (var t = 0; t < facts; t++)
        {
            var open = situation.Known[t];
            if (BitOperations.PopCount(open) < 2 || declined?.Contains(t) == true) continue;
            var left = 0.0;
            for (var v = 0; v < sheet.Terms[t].Values.Count; v++)
                if ((open >> v & 1) != 0) left += Uncertainty(lines, weights, outcome, count, t, 1UL << v, out var share, open) * share;
            if (left < bestLeft) (best, bestLeft) = (t, left);
        }
        if (best < 0) best = Mattering(lines, outcome, situation, facts, declined);
        return best < 0 ? null : sheet.Terms[best];
    }

    private static int[] Outcomes(Cell[] lines, int[] own, out int count)
    {
        var known = new Dictionary<int, List<(int Line, int Outcome)>>();
        var outcome = new int[lines.Length];
        count = 0;
        for (var i = 0; i < lines.Length; i++)
        {
            var hash = 17;
            foreach (var d in own) hash = hash * 31 + lines[i].Values[d];
            if (!known.TryGetValue(hash, out var bucket)) known[hash] = bucket = [];
            outcome[i] = -1;
            foreach (var (line, o) in bucket)
                if (own.All(d => lines[line].Values[d] == lines[i].Values[d])) { outcome[i] = o; break; }
            if (outcome[i] >= 0) continue;
            outcome[i] = count++;
            bucket.Add((i, outcome[i]));
        }
        return outcome;
    }

    /// <summary>Bits of uncertainty about the ruling, if a fact took these values.</summary>
    private static double Uncertainty(Cell[] lines, double[] weights, int[] outcome, int count, int fact, ulong values, out double share, ulong open = 0)
    {
        Span<double> mass = count <= 512 ? stackalloc double[count] : new double[count];
        mass.Clear();
        var total = 0.0;
        for (var i = 0; i < lines.Length; i++)
        {
            var weight = weights[i];
            if (fact >= 0)
            {
                if ((lines[i].Facts[fact] & values) == 0) continue;
                weight /= BitOperations.PopCount(lines[i].Facts[fact] & open);
            }
            mass[outcome[i]] += weight;
            total += weight;
        }
        share = total;
        if (total <= 0) return 0;
        var bits = 0.0;
        foreach (var m in mass) if (m > 0) bits -= m / total * Math.Log2(m / total);
        return bits;
    }

    /// <summary>A fact two lines with different rulings disagree on, though nothing else parts them: it matters though it settles nothing yet.</summary>
    private static int Mattering(Cell[] lines, int[] outcome, Situation situation, int facts, IReadOnlySet<int>? declined)
    {
        for (var i = 0; i < lines.Length; i++)
            for (var j = 0; j < i; j++)
            {
                if (outcome[i] == outcome[j]) continue;
                var (apart, only) = (0, -1);
                for (var t = 0; t < facts && apart < 2; t++)
                    if ((lines[i].Facts[t] & lines[j].Facts[t] & situation.Known[t]) == 0) (apart, only) = (apart + 1, t);
                if (apart == 1 && declined?.Contains(only) != true) return only;
            }
        return -1;
    }
}
