using System.Numerics.Tensors;
using System.Runtime.Intrinsics;

namespace Umpirage.Tune;

/// <summary>The curves between the model's products, and their slopes.</summary>
internal static unsafe class Curves
{
    /// <summary>The error function to about 1e-7 (Abramowitz and Stegun, 7.1.26).</summary>
    private static Vector512<float> Erf(Vector512<float> x)
    {
        var away = Vector512.Abs(x);
        var t = Vector512<float>.One / (Vector512<float>.One + away * 0.3275911f);
        var sum = ((((t * 1.061405429f + Vector512.Create(-1.453152027f)) * t + Vector512.Create(1.421413741f)) * t + Vector512.Create(-0.284496736f)) * t + Vector512.Create(0.254829592f)) * t;
        var erf = Vector512<float>.One - sum * Vector512.Exp(-(away * away));
        return Vector512.ConditionalSelect(Vector512.LessThan(x, Vector512<float>.Zero), -erf, erf);
    }

    /// <summary>The model's bend (GELU); its slope takes the place of what came in. The length is a multiple of sixteen.</summary>
    public static void Bend(float[] inThenSlope, float[] bent)
    {
        fixed (float* x = inThenSlope, y = bent)
            for (var i = 0; i < bent.Length; i += 16)
            {
                var at = Vector512.Load(x + i);
                var share = (Vector512<float>.One + Erf(at * 0.70710678f)) * 0.5f;
                Vector512.Store(at * share, y + i);
                Vector512.Store(share + at * (Vector512.Exp(at * at * -0.5f) * 0.39894228f), x + i);
            }
    }

    /// <summary>Each row to mean 0 and spread 1, then weighed. Keeps what the way back needs.</summary>
    public static void Level(float[] rows, float[] weight, float[] bias, float[] level, float[] inverse, float[] into)
    {
        var n = weight.Length;
        for (var r = 0; r < inverse.Length; r++)
        {
            var row = rows.AsSpan(r * n, n);
            var flat = level.AsSpan(r * n, n);
            TensorPrimitives.Subtract(row, TensorPrimitives.Sum<float>(row) / n, flat);
            inverse[r] = 1 / MathF.Sqrt(TensorPrimitives.SumOfSquares<float>(flat) / n + 1e-12f);
            TensorPrimitives.Multiply(flat, inverse[r], flat);
            TensorPrimitives.MultiplyAdd(flat, weight, bias, into.AsSpan(r * n, n));
        }
    }

    public static void LevelBack(float[] slope, float[] weight, float[] level, float[] inverse, float[] into)
    {
        var n = weight.Length;
        var weighed = new float[n];
        for (var r = 0; r < inverse.Length; r++)
        {
            var flat = level.AsSpan(r * n, n);
            var to = into.AsSpan(r * n, n);
            TensorPrimitives.Multiply(slope.AsSpan(r * n, n), weight, weighed);
            var (mean, along) = (TensorPrimitives.Sum<float>(weighed) / n, TensorPrimitives.Dot<float>(weighed, flat) / n);
            for (var i = 0; i < n; i++) to[i] = (weighed[i] - mean - flat[i] * along) * inverse[r];
        }
    }
}
