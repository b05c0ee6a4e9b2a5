using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Umpirage.Store;

namespace Umpirage.Tests.Screen;

/// <summary>A desk as its own process, on a store of its own, stopped and swept away at the end.</summary>
public sealed class DeskProcess : IAsyncDisposable
{
    // below the ports that the system itself gives to what connects
    private static int next = 12000 + Environment.ProcessId % 1000 * 20;

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

    private static readonly Lazy<Task<Place>> FileModel = new(() => Model(false)), ServerModel = new(() => Model(true));

    /// <summary>On a store of its own: empty, or a copy of the demonstration as a desk made it, once for each kind of store.</summary>
    /// <param name="postgres">On a fresh database of the tests' server; otherwise in a file.</param>
    public static async Task<DeskProcess> Open(bool postgres, bool demo)
    {
        var model = demo ? await (postgres ? ServerModel : FileModel).Value : null;
        var folder = Directory.CreateTempSubdirectory("desk").FullName;
        var place = postgres ? Place.OnServer(Fresh(model?.Postgres)) : Place.InFile(Path.Combine(folder, "desk.db"));
        if (model?.File is { } file) File.Copy(file, place.File!);
        return await Start(postgres, demo, folder, place);
    }

    /// <summary>A demonstration filled by a desk that opened on an empty store, and was closed.</summary>
    private static async Task<Place> Model(bool postgres)
    {
        var folder = Directory.CreateTempSubdirectory("desk-model").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        var place = postgres ? Place.OnServer(Fresh(null)) : Place.InFile(Path.Combine(folder, "desk.db"));
        await (await Start(postgres, demo: true, folder, place)).Close();
        if (postgres) return place;
        // with what still stands in the log beside it the file is whole
        using var connection = new SqliteConnection(place.Connection);
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
        command.ExecuteNonQuery();
        SqliteConnection.ClearPool(connection);
        return place;
    }

    private static async Task<DeskProcess> Start(bool postgres, bool demo, string folder, Place place)
    {
        var port = FreePort();
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

    /// <summary>Killed at once, without a word, and opened anew on the same store.</summary>
    public async Task<DeskProcess> KilledAndOpened(bool postgres)
    {
        await Close();
        return await Start(postgres, demo: true, folder, Place);
    }

    private static int FreePort()
    {
        while (true)
        {
            var port = Interlocked.Increment(ref next);
            try
            {
                using var taken = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, port);
                taken.Start();
                return port;
            }
            catch (System.Net.Sockets.SocketException) { }
        }
    }

    private void Hear(string? line)
    {
        if (line is not null) lock (said) said.Add(line);
    }

    private static string Fresh(string? model)
    {
        var server = Server!;
        var name = $"desk_{Guid.NewGuid():N}";
        using var connection = new Npgsql.NpgsqlConnection(server);
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = model is null ? $"CREATE DATABASE {name}" : $"CREATE DATABASE {name} TEMPLATE {new Npgsql.NpgsqlConnectionStringBuilder(model).Database}";
        command.ExecuteNonQuery();
        return new Npgsql.NpgsqlConnectionStringBuilder(server) { Database = name }.ConnectionString;
    }

    private async Task Close()
    {
        if (!process.HasExited) process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
        process.Dispose();
    }

    public async ValueTask DisposeAsync()
    {
        await Close();
        Directory.Delete(folder, recursive: true);
    }
}
