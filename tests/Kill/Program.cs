// Writes batch after batch into a store until somebody kills it. A batch's number is used once: its file lies in the folder before the store hears
// of it. "done N" is said only when the store has answered.
//   Umpirage.Kill FILE FOLDER
//   Umpirage.Kill --postgres CONNECTION FOLDER
//   Umpirage.Kill --crews CODES NIGHT FILE, or --postgres CONNECTION: crews instead of batches
using Umpirage.Kill;
using Umpirage.Store;

if (args[0] == "--crews")
{
    var kept = args[3] == "--postgres" ? Place.OnServer(args[4]) : Place.InFile(args[3]);
    kept.Ready().Dispose();
    new CrewRounds(args[1], kept, DateOnly.ParseExact(args[2], "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)).Run();
}
var place = args[0] == "--postgres" ? Place.OnServer(args[1]) : Place.InFile(args[0]);
var folder = args[^1];
var number = Directory.EnumerateFiles(folder, "*.batch").Select(f => int.Parse(Path.GetFileNameWithoutExtension(f))).DefaultIfEmpty(0).Max();
place.Ready().Dispose();
while (true)
{
    number++;
    var batch = new Batch(number);
    File.WriteAllText(Path.Combine(folder, $"{number}.batch"), batch.Text);
    using var store = place.Open();
    store.Actor = "kill";
    batch.Write(store);
    Console.Out.WriteLine($"done {number}");
    Console.Out.Flush();
}
