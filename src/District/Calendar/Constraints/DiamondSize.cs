namespace Umpirage.District.Calendar.Constraints;

/// <summary>A game on a diamond whose bases lie at another distance than its code plays.</summary>
public sealed class DiamondSize : Constraint
{
    public override string Name => "diamond of the right size";
    public override string Sentence => "A game is played on a diamond whose bases lie as far apart as its code says.";
    public override IReadOnlyList<string> Sheets => ["field"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var game in schedule.Standing)
        {
            var (diamond, code) = (schedule.Surroundings.Diamonds[game.Diamond], schedule.CodeOf(game));
            if (code.Fits(diamond.BasePath)) continue;
            yield return Broken(game.Diamond, [game], $"{game.Key} ({game.Division}) is on {diamond.Name}, with bases {diamond.BasePath} ft apart", code.Written("base distance"), $"field, {code.Source("base distance")}");
        }
    }
}
