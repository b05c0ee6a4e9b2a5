using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Umpirage.Tune;

/// <summary>
/// Products of matrices, blocked so that they run near the processor's speed. Strides tell how far the next row and the next column lie, so
/// that a matrix turned over is the same memory read another way.
/// </summary>
internal static unsafe class Matrix
{
    private const int Rows = 8, Columns = 32, Depth = 384;

    [ThreadStatic] private static float[]? packedA, packedB;

    /// <summary>C (m by n) is A (m by k) times B (k by n), or grows by it.</summary>
    public static void Multiply(int m, int n, int k, float* a, int aRow, int aColumn, float* b, int bRow, int bColumn, float* c, int cRow, bool grow = false)
    {
        if (m == 0 || n == 0) return;
        packedA ??= new float[Rows * Depth];
        var need = (n + Columns - 1) / Columns * Columns * Depth;
        if (packedB is null || packedB.Length < need) packedB = new float[need];
        var corner = stackalloc float[Rows * Columns];
        fixed (float* pa = packedA, pb = packedB)
            for (var k0 = 0; k0 < k; k0 += Depth)
            {
                var deep = Math.Min(Depth, k - k0);
                var add = grow || k0 > 0;
                for (var j = 0; j < n; j += Columns) PackB(b + (long)k0 * bRow + (long)j * bColumn, bRow, bColumn, Math.Min(Columns, n - j), deep, pb + j * deep);
                for (var i = 0; i < m; i += Rows)
                {
                    var high = Math.Min(Rows, m - i);
                    PackA(a + (long)i * aRow + (long)k0 * aColumn, aRow, aColumn, high, deep, pa);
                    for (var j = 0; j < n; j += Columns)
                    {
                        var wide = Math.Min(Columns, n - j);
                        var to = c + (long)i * cRow + j;
                        if (high == Rows && wide == Columns) { Tile(deep, pa, pb + j * deep, to, cRow, add); continue; }
                        Tile(deep, pa, pb + j * deep, corner, Columns, false);
                        for (var r = 0; r < high; r++)
                            for (var s = 0; s < wide; s++) to[(long)r * cRow + s] = corner[r * Columns + s] + (add ? to[(long)r * cRow + s] : 0);
                    }
                }
            }
    }

    private static void PackA(float* a, int row, int column, int high, int deep, float* to)
    {
        for (var i = 0; i < high; i++)
        {
            var from = a + (long)i * row;
            for (var k = 0; k < deep; k++) to[k * Rows + i] = from[(long)k * column];
        }
        for (var i = high; i < Rows; i++) for (var k = 0; k < deep; k++) to[k * Rows + i] = 0;
    }

    private static void PackB(float* b, int row, int column, int wide, int deep, float* to)
    {
        if (column == 1 && wide == Columns)
        {
            for (var k = 0; k < deep; k++)
            {
                Vector512.Store(Vector512.Load(b + (long)k * row), to + k * Columns);
                Vector512.Store(Vector512.Load(b + (long)k * row + 16), to + k * Columns + 16);
            }
            return;
        }
        for (var j = 0; j < wide; j++)
        {
            var from = b + (long)j * column;
            for (var k = 0; k < deep; k++) to[k * Columns + j] = from[(long)k * row];
        }
        for (var j = wide; j < Columns; j++) for (var k = 0; k < deep; k++) to[k * Columns + j] = 0;
    }

    /// <summary>Eight rows and thirty-two columns, all of which stay in registers.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Tile(int deep, float* a, float* b, float* c, int row, bool add)
    {
        Vector512<float> c00 = default, c01 = default, c10 = default, c11 = default, c20 = default, c21 = default, c30 = default, c31 = default;
        Vector512<float> c40 = default, c41 = default, c50 = default, c51 = default, c60 = default, c61 = default, c70 = default, c71 = default;
        for (var k = 0; k < deep; k++, a += Rows, b += Columns)
        {
            var (b0, b1) = (Vector512.Load(b), Vector512.Load(b + 16));
            var x = Vector512.Create(a[0]); c00 = Vector512.FusedMultiplyAdd(x, b0, c00); c01 = Vector512.FusedMultiplyAdd(x, b1, c01);
            x = Vector512.Create(a[1]); c10 = Vector512.FusedMultiplyAdd(x, b0, c10); c11 = Vector512.FusedMultiplyAdd(x, b1, c11);
            x = Vector512.Create(a[2]); c20 = Vector512.FusedMultiplyAdd(x, b0, c20); c21 = Vector512.FusedMultiplyAdd(x, b1, c21);
            x = Vector512.Create(a[3]); c30 = Vector512.FusedMultiplyAdd(x, b0, c30); c31 = Vector512.FusedMultiplyAdd(x, b1, c31);
            x = Vector512.Create(a[4]); c40 = Vector512.FusedMultiplyAdd(x, b0, c40); c41 = Vector512.FusedMultiplyAdd(x, b1, c41);
            x = Vector512.Create(a[5]); c50 = Vector512.FusedMultiplyAdd(x, b0, c50); c51 = Vector512.FusedMultiplyAdd(x, b1, c51);
            x = Vector512.Create(a[6]); c60 = Vector512.FusedMultiplyAdd(x, b0, c60); c61 = Vector512.FusedMultiplyAdd(x, b1, c61);
            x = Vector512.Create(a[7]); c70 = Vector512.FusedMultiplyAdd(x, b0, c70); c71 = Vector512.FusedMultiplyAdd(x, b1, c71);
        }
        Put(c, c00, c01, add); Put(c + row, c10, c11, add); Put(c + 2 * row, c20, c21, add); Put(c + 3 * row, c30, c31, add);
        Put(c + 4 * row, c40, c41, add); Put(c + 5 * row, c50, c51, add); Put(c + 6 * row, c60, c61, add); Put(c + 7 * row, c70, c71, add);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Put(float* c, Vector512<float> first, Vector512<float> second, bool add)
    {
        if (add) { first += Vector512.Load(c); second += Vector512.Load(c + 16); }
        Vector512.Store(first, c);
        Vector512.Store(second, c + 16);
    }

    /// <summary>The same with arrays, from given places in them.</summary>
    public static void Multiply(int m, int n, int k, ReadOnlySpan<float> a, int aRow, int aColumn, ReadOnlySpan<float> b, int bRow, int bColumn, Span<float> c, int cRow, bool grow = false)
    {
        fixed (float* pa = a, pb = b, pc = c) Multiply(m, n, k, pa, aRow, aColumn, pb, bRow, bColumn, pc, cRow, grow);
    }
}
