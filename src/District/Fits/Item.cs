namespace Umpirage.District.Fits;

/// <summary>
/// A question as the two-parameter model sees it: logit of the chance to answer rightly = slope × ability + intercept. Ability has mean 0 and
/// standard deviation 1 among those who were asked.
/// </summary>
public readonly record struct Item(double Slope, double Intercept)
{
    /// <summary>The ability at which right and wrong are equally likely.</summary>
    public double Difficulty => -Intercept / Slope;

    public double Chance(double ability) => 1 / (1 + Math.Exp(-(Slope * ability + Intercept)));

    /// <summary>How much an answer tells about an ability: the inverse of the variance it would leave, alone.</summary>
    public double Information(double ability)
    {
        var p = Chance(ability);
        return Slope * Slope * p * (1 - p);
    }
}

/// <summary>What is known of somebody's ability: the mean of what is still likely, and its standard deviation.</summary>
public readonly record struct Ability(double Mean, double Error)
{
    public (double Low, double High) Within95 => (Mean - 1.959964 * Error, Mean + 1.959964 * Error);
}
