using System.Text;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Kill;

/// <summary>The batch of a number: people, teams, games, or a single league, in turn. Every key begins with the number.</summary>
public sealed class Batch(int number)
{
    public const int Rows = 50;

    public string Kind => (number % 4) switch { 0 => "people", 1 => "teams", 2 => "games", _ => "league" };

    public string Text => Kind switch
    {
        "people" => "person,given name,age band,league,roles\r\n" + Lines(i => $"{Key(i)},Ada,adult,kill,umpire"),
        "teams" => "team,name,league,division\r\n" + Lines(i => $"{Key(i)},Team {i},kill,kill"),
        "games" => "game,division,visitor,home,diamond,day,start,status\r\n" + Lines(i => $"{Key(i)},kill,kill-1,kill-2,kill,2026-05-16,{i % 24:00}:00,planned"),
        _ => Key(0),
    };

    private string Key(int i) => $"b{number}-{i}";

    private static string Lines(Func<int, string> line) => string.Concat(Enumerable.Range(0, Rows).Select(i => line(i) + "\r\n"));

    public void Write(DistrictStore store)
    {
        if (Kind == "league")
        {
            store.Put(new League(Text, "A League"));
            store.SaveChanges();
            return;
        }
        var imported = Import.Run(store, FileKind.Named(Kind)!, Encoding.UTF8.GetBytes(Text), dryRun: false);
        if (!imported.Fine) throw new InvalidOperationException(imported.Faults[0].ToString());
    }
}
