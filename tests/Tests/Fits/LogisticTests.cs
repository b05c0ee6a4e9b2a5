using Umpirage.District.Fits;

namespace Umpirage.Tests.Fits;

/// <summary>Logistic regression on the 32 students of Spector and Mazzeo (1980), printed with its fit in Greene, Econometric Analysis.</summary>
public class LogisticTests
{
    private static readonly (double Gpa, double Tuce, double Psi, int Grade)[] Students =
    [
        (2.66, 20, 0, 0), (2.89, 22, 0, 0), (3.28, 24, 0, 0), (2.92, 12, 0, 0), (4.00, 21, 0, 1), (2.86, 17, 0, 0), (2.76, 17, 0, 0), (2.87, 21, 0, 0), (3.03, 25, 0, 0), (3.92, 29, 0, 1),
        (2.63, 20, 0, 0), (3.32, 23, 0, 0), (3.57, 23, 0, 0), (3.26, 25, 0, 1), (3.53, 26, 0, 0), (2.74, 19, 0, 0), (2.75, 25, 0, 0), (2.83, 19, 0, 0), (3.12, 23, 1, 0), (3.16, 25, 1, 1),
        (2.06, 22, 1, 0), (3.62, 28, 1, 1), (2.89, 14, 1, 0), (3.51, 26, 1, 0), (3.54, 24, 1, 1), (2.83, 27, 1, 1), (3.39, 17, 1, 1), (2.67, 24, 1, 0), (3.65, 21, 1, 1), (4.00, 23, 1, 1),
        (3.10, 21, 1, 0), (2.39, 19, 1, 1),
    ];

    [Fact]
    public void The_fit_is_the_published_one()
    {
        var fit = Logistic.Fit([.. Students.Select(s => (double[])[s.Gpa, s.Tuce, s.Psi])], [.. Students.Select(s => s.Grade == 1)])!;
        // Greene prints -13.0213, 2.8261, .0952, 2.3787, log-likelihood -12.8896 and errors 4.931, 1.263, .142, 1.065; more digits from R's glm
        foreach (var (expected, found) in ((double[])[-13.02135, 2.82611, 0.09516, 2.37869]).Zip(fit.Coefficients)) Assert.Equal(expected, found, 0.00005);
        // R stops a step earlier than we do, which its fourth decimal of the errors shows
        foreach (var (expected, found) in ((double[])[4.931, 1.263, 0.142, 1.065]).Zip(fit.Errors)) Assert.Equal(expected, found, 0.0005);
        Assert.Equal(-12.8896342, fit.LogLikelihood, 1e-6);
    }

    [Fact]
    public void The_shared_students_are_the_retyped_ones()
    {
        if (Folder.Shared("data", "logistic", "spector.csv") is not { } file) return;
        var rows = File.ReadLines(file).Skip(1).Select(l => l.Split(',').Select(double.Parse).ToArray()).Select(r => (r[0], r[1], r[2], (int)r[3]));
        Assert.Equal(Students, rows);
    }

    [Fact]
    public void What_is_parted_perfectly_has_no_fit() =>
        Assert.Null(Logistic.Fit([[1], [2], [3], [4]], [false, false, true, true]));
}
