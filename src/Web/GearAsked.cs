namespace Umpirage.Web;

/// <summary>Gear that is looked over at the desk: the code, the day, what the list is of, the game, and the pieces so far. All stands in the address, and nobody keeps it.</summary>
public sealed record GearAsked(string Code, DateOnly On, string For, string Game, string Pieces)
{
    /// <summary>The same list as the end of an address, with a kind of gear to look at next.</summary>
    public string Query(string? kind) => QueryString.Create(new Dictionary<string, string?>
    {
        ["code"] = Code, ["on"] = Rules.Ground.CodeAddress.Day(On), ["for"] = For, ["game"] = Game, ["t"] = Pieces, ["kind"] = kind,
    }.Where(p => !string.IsNullOrEmpty(p.Value))).ToString();
}
