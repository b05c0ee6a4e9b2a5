using System.Runtime.InteropServices;

namespace Umpirage.Finder;

/// <summary>Numbers as they lie in the cache: half as long as in memory, which is exact enough for nearness.</summary>
internal static class Stored
{
    public static void WriteHalves(BinaryWriter to, ReadOnlySpan<float> numbers)
    {
        var halves = new Half[numbers.Length];
        for (var i = 0; i < halves.Length; i++) halves[i] = (Half)numbers[i];
        to.Write(MemoryMarshal.AsBytes<Half>(halves));
    }

    public static float[] ReadHalves(BinaryReader from, int count)
    {
        var halves = new Half[count];
        from.BaseStream.ReadExactly(MemoryMarshal.AsBytes(halves.AsSpan()));
        var numbers = new float[count];
        for (var i = 0; i < count; i++) numbers[i] = (float)halves[i];
        return numbers;
    }

    public static void WriteInts(BinaryWriter to, int[] numbers)
    {
        to.Write(numbers.Length);
        to.Write(MemoryMarshal.AsBytes<int>(numbers));
    }

    public static int[] ReadInts(BinaryReader from)
    {
        var numbers = new int[from.ReadInt32()];
        from.BaseStream.ReadExactly(MemoryMarshal.AsBytes(numbers.AsSpan()));
        return numbers;
    }
}
