using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>
/// Weighs the examples so that, summed by their likeness to a question, they speak for the right subject. Solved outright, which also tells
/// what would be said of every example had it not been there: an honest figure without leaving out one after another.
/// </summary>
internal static class Ridge
{
    private const int Block = 64;

    /// <param name="likeness">Lower half, with each example's doubt added on the diagonal; it is worked on in place.</param>
    public static (float[][] Weights, float[][] LeftOut) Solve(float[][] likeness, int[] subject, int subjects)
    {
        var n = likeness.Length;
        var root = Inverse(Root(likeness));
        var share = new float[subjects][];
        for (var c = 0; c < subjects; c++) share[c] = new float[n];
        var all = new float[n];
        for (var j = 0; j < n; j++)
        {
            TensorPrimitives.Add(share[subject[j]], root[j], share[subject[j]]);
            TensorPrimitives.MultiplyAdd(root[j], -1f / subjects, all, all);
        }
        foreach (var s in share) TensorPrimitives.Add(s, all, s);
        var (weights, left) = (new float[n][], new float[n][]);
        Parallel.For(0, n, i =>
        {
            var own = TensorPrimitives.Dot<float>(root[i].AsSpan(i), root[i].AsSpan(i));
            (weights[i], left[i]) = (new float[subjects], new float[subjects]);
            for (var c = 0; c < subjects; c++)
            {
                weights[i][c] = TensorPrimitives.Dot<float>(root[i].AsSpan(i), share[c].AsSpan(i));
                left[i][c] = (subject[i] == c ? 1f : 0f) - 1f / subjects - weights[i][c] / own;
            }
        });
        return (weights, left);
    }

    /// <summary>The triangular root of a symmetric table (Cholesky), block by block.</summary>
    private static float[][] Root(float[][] a)
    {
        var n = a.Length;
        for (var from = 0; from < n; from += Block)
        {
            var to = Math.Min(n, from + Block);
            var (start, end) = (from, to);
            for (var i = start; i < end; i++)
                for (var j = start; j <= i; j++)
                {
                    var rest = a[i][j] - TensorPrimitives.Dot<float>(a[i].AsSpan(start, j - start), a[j].AsSpan(start, j - start));
                    a[i][j] = i == j ? MathF.Sqrt(Math.Max(rest, 1e-8f)) : rest / a[j][j];
                }
            Parallel.For(end, n, i =>
            {
                for (var j = start; j < end; j++)
                    a[i][j] = (a[i][j] - TensorPrimitives.Dot<float>(a[i].AsSpan(start, j - start), a[j].AsSpan(start, j - start))) / a[j][j];
            });
            Parallel.For(end, n, i =>
            {
                var own = a[i].AsSpan(start, end - start);
                for (var j = end; j <= i; j++) a[i][j] -= TensorPrimitives.Dot<float>(own, a[j].AsSpan(start, end - start));
            });
        }
        return a;
    }

    /// <summary>The inverse of a lower triangle, by columns.</summary>
    private static float[][] Inverse(float[][] l)
    {
        var n = l.Length;
        var columns = new float[n][];
        Parallel.For(0, n, j =>
        {
            var x = new float[n];
            x[j] = 1 / l[j][j];
            for (var i = j + 1; i < n; i++) x[i] = -TensorPrimitives.Dot<float>(l[i].AsSpan(j, i - j), x.AsSpan(j, i - j)) / l[i][i];
            columns[j] = x;
        });
        return columns;
    }
}
