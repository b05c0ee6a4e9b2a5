namespace Umpirage.District.Demo;

/// <summary>Numbers that look random and are the same for the same seed on every machine and version (SplitMix64; Steele, Lea and Flood 2014).</summary>
internal sealed class Dice(ulong seed)
{
    private ulong state = seed;

    private ulong Next()
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>A whole number from 0 up to, not including, <paramref name="below"/>.</summary>
    public int Below(int below) => (int)(Next() % (ulong)below);
    public int Between(int low, int high) => low + Below(high - low + 1);
    public bool In(int of) => Below(of) == 0;
    public T Of<T>(IReadOnlyList<T> list) => list[Below(list.Count)];

    public List<T> Shuffled<T>(IEnumerable<T> items)
    {
        List<T> list = [.. items];
        for (var i = list.Count - 1; i > 0; i--) { var j = Below(i + 1); (list[i], list[j]) = (list[j], list[i]); }
        return list;
    }
}
