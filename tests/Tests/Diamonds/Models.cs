namespace Umpirage.Tests.Diamonds;

/// <summary>The models of the nonlinear reference sets, typed after the headers of their files: parameters b1, b2, ... and x.</summary>
internal static class Models
{
    private static double Sq(double v) => v * v;

    private static double Peaks(double[] b, double x) =>
        b[0] * Math.Exp(-b[1] * x) + b[2] * Math.Exp(-Sq((x - b[3]) / b[4])) + b[5] * Math.Exp(-Sq((x - b[6]) / b[7]));

    private static double Decays(double[] b, double x) => b[0] * Math.Exp(-b[1] * x) + b[2] * Math.Exp(-b[3] * x) + b[4] * Math.Exp(-b[5] * x);

    private static double Cubics(double[] b, double x) => (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6])));

    private static double Wave(double a, double b, double period, double x) => a * Math.Cos(2 * Math.PI * x / period) + b * Math.Sin(2 * Math.PI * x / period);

    public static IReadOnlyDictionary<string, Func<double[], double[], double>> All { get; } = new Dictionary<string, Func<double[], double[], double>>
    {
        ["Misra1a"] = (b, x) => b[0] * (1 - Math.Exp(-b[1] * x[0])),
        ["Chwirut1"] = (b, x) => Math.Exp(-b[0] * x[0]) / (b[1] + b[2] * x[0]),
        ["Chwirut2"] = (b, x) => Math.Exp(-b[0] * x[0]) / (b[1] + b[2] * x[0]),
        ["Lanczos1"] = (b, x) => Decays(b, x[0]), ["Lanczos2"] = (b, x) => Decays(b, x[0]), ["Lanczos3"] = (b, x) => Decays(b, x[0]),
        ["Gauss1"] = (b, x) => Peaks(b, x[0]), ["Gauss2"] = (b, x) => Peaks(b, x[0]), ["Gauss3"] = (b, x) => Peaks(b, x[0]),
        ["DanWood"] = (b, x) => b[0] * Math.Pow(x[0], b[1]),
        ["Misra1b"] = (b, x) => b[0] * (1 - 1 / Sq(1 + b[1] * x[0] / 2)),
        ["Kirby2"] = (b, x) => (b[0] + x[0] * (b[1] + x[0] * b[2])) / (1 + x[0] * (b[3] + x[0] * b[4])),
        ["Hahn1"] = (b, x) => Cubics(b, x[0]), ["Thurber"] = (b, x) => Cubics(b, x[0]),
        ["Nelson"] = (b, x) => b[0] - b[1] * x[0] * Math.Exp(-b[2] * x[1]),
        ["MGH17"] = (b, x) => b[0] + b[1] * Math.Exp(-x[0] * b[3]) + b[2] * Math.Exp(-x[0] * b[4]),
        ["Misra1c"] = (b, x) => b[0] * (1 - 1 / Math.Sqrt(1 + 2 * b[1] * x[0])),
        ["Misra1d"] = (b, x) => b[0] * b[1] * x[0] / (1 + b[1] * x[0]),
        ["Roszman1"] = (b, x) => b[0] - b[1] * x[0] - Math.Atan(b[2] / (x[0] - b[3])) / Math.PI,
        ["ENSO"] = (b, x) => b[0] + Wave(b[1], b[2], 12, x[0]) + Wave(b[4], b[5], b[3], x[0]) + Wave(b[7], b[8], b[6], x[0]),
        ["MGH09"] = (b, x) => b[0] * (Sq(x[0]) + x[0] * b[1]) / (Sq(x[0]) + x[0] * b[2] + b[3]),
        ["MGH10"] = (b, x) => b[0] * Math.Exp(b[1] / (x[0] + b[2])),
        ["BoxBOD"] = (b, x) => b[0] * (1 - Math.Exp(-b[1] * x[0])),
        ["Rat42"] = (b, x) => b[0] / (1 + Math.Exp(b[1] - b[2] * x[0])),
        ["Rat43"] = (b, x) => b[0] / Math.Pow(1 + Math.Exp(b[1] - b[2] * x[0]), 1 / b[3]),
        ["Eckerle4"] = (b, x) => b[0] / b[1] * Math.Exp(-0.5 * Sq((x[0] - b[2]) / b[1])),
        ["Bennett5"] = (b, x) => b[0] * Math.Pow(b[1] + x[0], -1 / b[2]),
    };

    /// <summary>Residuals of a set under its model; Nelson's is a model of the logarithm.</summary>
    public static Func<double[], double[]> Residuals(string name, double[][] data) =>
        b => [.. data.Select(d => (name == "Nelson" ? Math.Log(d[0]) : d[0]) - All[name](b, d[1..]))];

    /// <summary>Slopes worked out by hand, where differences are too coarse for a narrow valley; none elsewhere.</summary>
    public static Func<double[], double[][]>? Slopes(string name, double[][] data) => name != "MGH10" ? null : b =>
    [
        .. data.Select(d => (At: d[1] + b[2], E: Math.Exp(b[1] / (d[1] + b[2])))).Select(d => new[] { -d.E, -b[0] * d.E / d.At, b[0] * d.E * b[1] / Sq(d.At) }),
    ];
}
