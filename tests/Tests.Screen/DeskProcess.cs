using System.Diagnostics;
using Umpirage.Store;

namespace Umpirage.Tests.Screen;

/// <summary>A desk as its own process, on a store of its own, stopped and swept away at the end.</summary>
public sealed class DeskProcess : IAsyncDisposable
{
    private static int next = 21000 + Environment.ProcessId % 5000 * 7;

    private readonly Process process;
    private readonly string folder;
    private readonly List<string> said = [];

    private DeskProcess(Process process, string folder, Place place, Uri address) => (this.process, this.folder, Place, Address) = (process, folder, place, address);

    public Place Place { get; }
    public Uri Address { get; }
    public IReadOnlyList<string> Said { get { lock (said) return [.. said]; } }

    /// <summary>The project's folder: the nearest above that holds codes.</summary>
    public static string Root { get; } = Above(AppContext.BaseDirectory);

    private static string Above(string folder) => Directory.Exists(Path.Combine(folder, "codes", "sheets")) ? folder : Above(Path.GetDirectoryName(folder.TrimEnd('/'))!);

    public static string? Server => Environment.GetEnvironmentVariable("UMPIRAGE_TEST_POSTGRES");

    /// <param name="postgres">On a fresh database of the tests' server; otherwise in a file.</param>
    /// <param name="fill">Called on the empty store before the desk opens.</param>
    public static async Task<DeskProcess> Open(bool postgres, bool demo, Action<DistrictStore>? fill = null)
    {
        var folder = Directory.CreateTempSubdirectory("desk").FullName;
        var place = postgres ? Place.OnServer(Fresh(Server!)) : Place.InFile(Path.Combine(folder, "desk.db"));
        if (fill is not null) using (var store = place.Ready()) fill(store);
        var port = Interlocked.Increment(ref next);
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder };
        start.ArgumentList.Add(Path.Combine(Root, "src", "Web", "bin", "Release", "net10.0", "Umpirage.Web.dll"));
        foreach (var word in (string[])(postgres ? ["--postgres", place.Postgres!] : ["--data", place.File!])) start.ArgumentList.Add(word);
        if (demo) start.ArgumentList.Add("--demo");
        start.ArgumentList.Add("--port");
        start.ArgumentList.Add(port.ToString(System.Globalization.CultureInfo.InvariantCulture));
        start.Environment["UMPIRAGE_ROOT"] = Root;
        var desk = new DeskProcess(Process.Start(start)!, folder, place, new($"http://localhost:{port}"));
        desk.process.OutputDataReceived += (_, line) => desk.Hear(line.Data);
        desk.process.ErrorDataReceived += (_, line) => desk.Hear(line.Data);
        desk.process.BeginOutputReadLine();
        desk.process.BeginErrorReadLine();
        using var http = new HttpClient();
        for (var i = 0; i < 600; i++)
        {
            if (desk.process.HasExited) throw new InvalidOperationException("the desk did not open: " + string.Join('\n', desk.Said));
            try { if ((await http.GetAsync(new Uri(desk.Address, "/health"))).IsSuccessStatusCode) return desk; }
            catch (HttpRequestException) { }
            await Task.Delay(100);
        }
        throw new TimeoutException("the desk did not open within a minute");
    }

    private void Hear(string? line)
    {
        if (line is not null) lock (said) said.Add(line);
    }

    private static string Fresh(string server)
    {
        var name = $"desk_{Guid.NewGuid():N}";
        using var connection = new Npgsql.NpgsqlConnection(server);
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"CREATE DATABASE {name}";
        command.ExecuteNonQuery();
        return new Npgsql.NpgsqlConnectionStringBuilder(server) { Database = name }.ConnectionString;
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited) process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
        process.Dispose();
        Directory.Delete(folder, recursive: true);
    }
}
