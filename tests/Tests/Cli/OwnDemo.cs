using System.Diagnostics;
using Umpirage.Store;

namespace Umpirage.Tests.Cli;

/// <summary>A project's folder of a test's own, with the demonstration, whose clock stands on the Saturday of the stories. Runs the built program itself.</summary>
internal sealed class OwnDemo : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("umpirage-demo-").FullName;

    public OwnDemo()
    {
        Directory.CreateSymbolicLink(Path.Combine(root, "codes"), Folder.Of("codes"));
        Directory.CreateDirectory(Path.Combine(root, ".build"));
        Store.OwnStore.CopyOslemoor(Place.File!);
    }

    public Place Place => Place.DemoIn(root);

    public string PathOf(string name) => Path.Combine(root, name);

    public void Dispose() => Directory.Delete(root, recursive: true);

    public (int Code, string Out, string Error) Run(params IEnumerable<string> words)
    {
        using var process = Start(words);
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, text, error.Result);
    }

    public Process Start(params IEnumerable<string> words)
    {
        var configuration = AppContext.BaseDirectory.Contains("/Release/") ? "Release" : "Debug";
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true, WorkingDirectory = Folder.Root };
        foreach (var word in words.Prepend(Folder.Of("src", "Cli", "bin", configuration, "net10.0", "Umpirage.Cli.dll"))) start.ArgumentList.Add(word);
        start.Environment["UMPIRAGE_ROOT"] = root;
        return Process.Start(start)!;
    }
}
