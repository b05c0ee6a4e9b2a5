using System.Globalization;
using System.Text.RegularExpressions;

namespace Umpirage.Tests.Diamonds;

/// <summary>A reference data set of the US National Institute of Standards and Technology (StRD, public domain): starts, certified values, data.</summary>
internal sealed partial record Strd(string Name, double[][] Starts, double[] Certified, double[] Deviations, double SumOfSquares, double[][] Data)
{
    [GeneratedRegex(@"^\s*[bB]\d+\s*=?\s+(.+)$")]
    private static partial Regex Parameter();

    [GeneratedRegex(@"Data\s+\(lines\s+(\d+) to\s+(\d+)\)")]
    private static partial Regex DataLines();

    public static Strd Read(string file)
    {
        var lines = File.ReadAllLines(file);
        var parameters = lines.Select(l => Parameter().Match(l)).Where(m => m.Success).Select(m => Numbers(m.Groups[1].Value)).Where(n => n.Length >= 2).ToList();
        var starts = parameters[0].Length == 4 ? 2 : 0;
        var span = lines.Select(l => DataLines().Match(l)).First(m => m.Success);
        var (from, until) = (int.Parse(span.Groups[1].Value, CultureInfo.InvariantCulture), int.Parse(span.Groups[2].Value, CultureInfo.InvariantCulture));
        var data = lines[(from - 1)..until].Select(Numbers).Where(n => n.Length >= 2).ToArray();
        var sum = lines.Where(l => l.Contains("Residual Sum of Squares:") || Regex.IsMatch(l, @"^Residual\s+\d+\s")).Select(l => Numbers(l[(l.Contains(':') ? l.IndexOf(':') + 1 : "Residual".Length)..])).Select(n => n.Length > 1 ? n[1] : n[0]).First();
        return new(Path.GetFileNameWithoutExtension(file), [.. Enumerable.Range(0, starts).Select(s => parameters.Select(p => p[s]).ToArray())],
            [.. parameters.Select(p => p[starts])], [.. parameters.Select(p => p[starts + 1])], sum, data);
    }

    private static double[] Numbers(string text) =>
        [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out var n) ? n : double.NaN).Where(n => !double.IsNaN(n))];

    /// <summary>Correct digits: -log10 of the relative error, or of the absolute where the certified value is 0; 15 where nothing differs.</summary>
    public static double Digits(double found, double certified)
    {
        var error = certified == 0 ? Math.Abs(found) : Math.Abs(found - certified) / Math.Abs(certified);
        return error == 0 ? 15 : Math.Min(15, -Math.Log10(error));
    }

    public double Digits(IEnumerable<double> found) => found.Zip(Certified, Digits).Min();
}
