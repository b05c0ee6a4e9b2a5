using Umpirage.Tune;

namespace Umpirage.Tests.Tune;

/// <summary>Products in blocks against the plain sum of products, also of matrices turned over and of sizes that fill no block.</summary>
public class MatrixTests
{
    [Theory]
    [InlineData(8, 32, 16, false, false)]
    [InlineData(13, 37, 50, false, true)]
    [InlineData(9, 33, 400, true, false)]
    [InlineData(1, 1, 1, true, true)]
    [InlineData(50, 50, 32, true, true)]
    public void The_product_is_the_sum_of_products(int m, int n, int k, bool turnedA, bool turnedB)
    {
        var chance = new Random(7);
        float[] Some(int count) => [.. Enumerable.Range(0, count).Select(_ => chance.NextSingle() - 0.5f)];
        var (a, b, before) = (Some(m * k), Some(k * n), Some(m * n));
        var c = (float[])before.Clone();
        Matrix.Multiply(m, n, k, a, turnedA ? 1 : k, turnedA ? m : 1, b, turnedB ? 1 : n, turnedB ? k : 1, c, n, true);
        for (var i = 0; i < m; i++)
            for (var j = 0; j < n; j++)
            {
                var sum = (double)before[i * n + j];
                for (var p = 0; p < k; p++) sum += (double)(turnedA ? a[p * m + i] : a[i * k + p]) * (turnedB ? b[j * k + p] : b[p * n + j]);
                Assert.Equal(sum, c[i * n + j], 1e-4);
            }
    }
}
