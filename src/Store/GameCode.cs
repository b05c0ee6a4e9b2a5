using Umpirage.District.Calendar;
using Umpirage.District.Options;
using Umpirage.Rules.Codes;

namespace Umpirage.Store;

/// <summary>The address of the code of a game on record, without a day.</summary>
public static class GameCode
{
    public static string Of(DistrictStore store, Codebook book, ScheduledGame game) =>
        Governing.Code(book, store.Divisions.Find(game.Division)!, store.Leagues.Find(store.Teams.Find(game.Home)!.League)!, store.Leagues.Find(store.Teams.Find(game.Visitor)!.League)!);
}
