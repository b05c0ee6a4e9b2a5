namespace Umpirage.Tune;

/// <summary>Chooses from where on a reading is to be believed.</summary>
internal static class Limit
{
    /// <summary>The lowest chance from which on so large a share of the readings is right; 1 when there is none.</summary>
    /// <param name="share">0 to 1.</param>
    public static float Of(IEnumerable<(float Chance, bool Right)> readings, double share)
    {
        var (limit, right, count) = (1f, 0, 0);
        foreach (var together in readings.GroupBy(r => r.Chance).OrderByDescending(g => g.Key))
        {
            count += together.Count();
            right += together.Count(r => r.Right);
            if (right >= share * count) limit = together.Key;
        }
        return limit;
    }
}
