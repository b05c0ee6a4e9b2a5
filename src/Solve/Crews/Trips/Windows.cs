namespace Umpirage.Solve.Crews.Trips;

/// <summary>
/// Lower bounds for every span of rounds: what its own rounds cost at least, alone or as spans put together (Toffolo, Wauters, Van Malderen and
/// Vanden Berghe 2016). Written by one thread, read by others: a reader may see an older, smaller number, which is a bound as well.
/// </summary>
internal sealed class Windows(int rounds)
{
    /// <summary>The cost of a span that cannot be worked at all; twice and a half of it still fits in a number.</summary>
    public const int Never = int.MaxValue / 4;

    private readonly int[,] least = new int[rounds, rounds];

    public int this[int from, int to] => Volatile.Read(ref least[from, to]);

    /// <summary>A span is now known to cost so much at least; spans around it follow.</summary>
    public void Raise(int from, int to, int cost)
    {
        if (cost <= least[from, to]) return;
        Volatile.Write(ref least[from, to], cost);
        for (var a = from; a >= 0; a--)
            for (var b = to; b < rounds; b++)
            {
                var sum = Math.Min(Never, least[a, from] + cost + least[to, b]);
                if (sum > least[a, b]) Volatile.Write(ref least[a, b], sum);
            }
    }
}
