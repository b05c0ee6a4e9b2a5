using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;
using Umpirage.District.Crews;
using Umpirage.District.Demo;
using Umpirage.Store.Files;

namespace Umpirage.Store;

/// <summary>Fills an empty store with many records at once; the trail gets one line a table.</summary>
public static class Seed
{
    public static void Put(DistrictStore store, IEnumerable<object> records)
    {
        using var transaction = store.Database.BeginTransaction();
        foreach (var group in records.GroupBy(r => r.GetType()))
        {
            var count = Fill(store, store.Model.FindEntityType(group.Key)!, group);
            store.Trail.Add(new() { At = DateTime.UtcNow, By = store.Actor, What = group.Key.Name, Key = "*", Deed = "added", After = $"{count} records" });
        }
        store.SaveChanges();
        transaction.Commit();
    }

    /// <summary>The files of the demonstration, its Saturday and its clinics, in the order in which they refer to each other.</summary>
    private static readonly string[] DemoFiles =
    [
        .. ((string[])["people", "clearances", "certificates", "availability", "games", "approvals", "interests", "homes", "coordinators", "endings", "crews", "logs"]).Select(k => $"saturday/{k}"),
        .. ((string[])["clinics", "attendance", "tests", "answers"]).Select(k => $"clinic/{k}"),
    ];

    /// <summary>Fills an empty store with the invented district, its Saturday and its clinics.</summary>
    /// <param name="text">Gives the text of a file of demo/oslemoor by its name.</param>
    public static void Demo(DistrictStore store, Func<string, string> text)
    {
        store.Actor = "the demonstration's generator";
        store.Today = DateOnly.FromDateTime(Oslemoor.Now);
        Put(store, Oslemoor.Make(Plan.Read(text)));
        foreach (var file in DemoFiles)
            if (Import.Run(store, FileKind.Named(file.Split('/')[1])!, Encoding.UTF8.GetBytes(text($"{file}.csv")), dryRun: false) is { Fine: false } faulty)
                throw new InvalidDataException($"demo/oslemoor/{file}.csv, {faulty.Faults[0]}");
        Put(store, Told(store));
    }

    /// <summary>The crews of the Saturday, published three evenings before; for games further ahead none are made yet.</summary>
    private static IEnumerable<PublishedPlace> Told(DistrictStore store)
    {
        var records = CrewReader.Read(store);
        return Published.Of([]).Against(records, records.Games.Where(g => g.Day == DateOnly.FromDateTime(Oslemoor.Now)), DateTime.SpecifyKind(Oslemoor.Now.Date.AddDays(-2), DateTimeKind.Utc)).Select(c => c.Now);
    }

    private static int Fill(DistrictStore store, IEntityType type, IEnumerable<object> records)
    {
        List<IProperty> properties = [.. type.GetProperties()];
        using var command = Sql.Insert(store, type.GetTableName()!, [.. properties.Select(p => p.GetColumnName())]);
        var count = 0;
        foreach (var record in records)
        {
            command.Parameters.Clear();
            for (var i = 0; i < properties.Count; i++)
                command.Parameters.Add(properties[i].GetRelationalTypeMapping().CreateParameter(command, "@p" + i, properties[i].PropertyInfo!.GetValue(record), properties[i].IsNullable));
            command.ExecuteNonQuery();
            count++;
        }
        return count;
    }
}
