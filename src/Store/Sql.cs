using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Umpirage.Store;

/// <summary>Commands for whole tables, within the transaction that is under way. Names are those of the program's own tables.</summary>
internal static class Sql
{
    public static string Quoted(string name) => $"\"{name}\"";

    public static DbCommand Command(DistrictStore store, string text)
    {
        var command = store.Database.GetDbConnection().CreateCommand();
        command.Transaction = store.Database.CurrentTransaction!.GetDbTransaction();
        command.CommandText = text;
        return command;
    }

    /// <summary>Adds one row; its parameters are @p0, @p1 and so on, in the order of the columns.</summary>
    public static DbCommand Insert(DistrictStore store, string table, IReadOnlyList<string> columns) =>
        Command(store, $"INSERT INTO {Quoted(table)} ({string.Join(", ", columns.Select(Quoted))}) VALUES ({string.Join(", ", columns.Select((_, i) => "@p" + i))})");
}
