using Umpirage.District.Calendar;

namespace Umpirage.Store.Files;

/// <summary>Reads games out of a file without taking them in: comma-separated of the kind games, or an iCalendar stream.</summary>
public static class ScheduleFile
{
    /// <summary>Nothing when there are faults; teams, divisions and diamonds must be on record.</summary>
    public static IReadOnlyList<ScheduledGame> Read(DistrictStore store, byte[] bytes, bool calendar, List<FileFault> faults)
    {
        var kind = new GameFile();
        var rows = calendar ? CalendarFile.Rows(store, bytes, faults) : CsvText.Read(bytes, kind.Columns, faults);
        var known = new Known(store, kind, rows, null);
        var games = new Dictionary<string, ScheduledGame>();
        foreach (var cells in rows)
        {
            var row = new Row(cells.Number, cells.Cells, faults);
            var before = faults.Count;
            var game = (ScheduledGame)kind.Read(row, known)[0];
            if (faults.Count == before && !games.TryAdd(game.Key, game)) row.Fault("game", game.Key, "each game once");
            if (faults.Count > 1000) break;
        }
        return faults.Count > 0 ? [] : [.. games.Values];
    }
}
