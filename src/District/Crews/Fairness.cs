namespace Umpirage.District.Crews;

/// <summary>How much one umpire got in a span of days, beside what was offered.</summary>
/// <param name="Share">Games over games offered in those weeks.</param>
public sealed record FairShare(CrewPerson Person, int Games, int Plates, double Offered, double Share);

/// <summary>Shares of all umpires, and how far they lie apart.</summary>
/// <param name="Spread">The standard deviation of the shares.</param>
public sealed record Fairness(IReadOnlyList<FairShare> Shares, double Mean, double Spread)
{
    public static Fairness Of(CrewPlan plan, DateOnly from, DateOnly until)
    {
        var weeks = (until.DayNumber - from.DayNumber + 1) / 7.0;
        List<FairShare> shares = [.. plan.Officials.Select(p =>
        {
            var worked = plan.Of(p).Where(s => s.Game.Day >= from && s.Game.Day <= until).ToList();
            var offered = p.Official!.GamesAWeek * weeks;
            return new FairShare(p, worked.Count, worked.Count(s => s.IsPlate), offered, offered == 0 ? 0 : worked.Count / offered);
        }).OrderBy(s => s.Share).ThenBy(s => s.Person.Key, StringComparer.Ordinal)];
        if (shares.Count == 0) return new([], 0, 0);
        var mean = shares.Average(s => s.Share);
        return new(shares, mean, Math.Sqrt(shares.Average(s => (s.Share - mean) * (s.Share - mean))));
    }
}
