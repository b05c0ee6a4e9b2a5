namespace Umpirage.District.Crews;

/// <summary>How far games have their crews. A game without a plate umpire has none, whoever is on its bases.</summary>
/// <param name="OneUmpire">Games for two or more that have only their plate umpire.</param>
/// <param name="YouthBases">Places wanted for youth on the bases; they are not required.</param>
public sealed record Coverage(int Games, int Required, int Filled, int OneUmpire, int NoUmpire, int YouthBases, int YouthFilled)
{
    public int Open => Required - Filled;

    public static Coverage Of(CrewPlan plan, IReadOnlyCollection<CrewGame> games)
    {
        var (required, filled, one, none, youth, youthFilled) = (0, 0, 0, 0, 0, 0);
        foreach (var game in games)
        {
            List<string> needed = [.. CrewPlace.Of(game.Division).Where(CrewPlace.IsRequired)];
            List<string> open = [.. plan.Open(game)];
            required += needed.Count;
            filled += needed.Count(p => !open.Contains(p));
            if (needed.Count > 0 && open.Contains(CrewPlace.Plate)) none++;
            else if (needed.Count > 1 && needed.Count(p => !open.Contains(p)) == 1) one++;
            if (!game.Division.YouthBase) continue;
            youth++;
            if (!open.Contains(CrewPlace.YouthBase)) youthFilled++;
        }
        return new(games.Count, required, filled, one, none, youth, youthFilled);
    }
}
