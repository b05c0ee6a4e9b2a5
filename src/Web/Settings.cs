using Umpirage.District.Demo;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>
/// How the desk was opened: on which district, at which door, with which rule code. The demonstration needs no sign-in, so it opens on a store
/// of its own only.
/// </summary>
public sealed record Settings(string Root, Place Place, bool Demo, int Port, DateTime? StandsAt)
{
    public const int UsualPort = 8460;

    public string Codes => Path.Combine(Root, "codes");
    public string Casebook => Path.Combine(Root, "casebook");
    public string DemoTables => Path.Combine(Root, "demo", "oslemoor");
    /// <summary>Where instructors' own files lie: beside the district's records when these are a file.</summary>
    public string Lessons => Path.Combine(Place.File is { } file ? Path.GetDirectoryName(Path.GetFullPath(file))! : Root, "lessons");
    /// <summary>Where the finder keeps what it worked out.</summary>
    public string FinderCache => Finder.Material.IndexBeside(Codes);

    /// <summary>Reads what was typed after "desk"; null, with the reason, when it cannot be used.</summary>
    public static Settings? Read(IReadOnlyList<string> args, string root, out string fault)
    {
        (fault, string? file, string? server, var port, var demo) = ("", null, null, 0, false);
        for (var i = 0; i < args.Count; i++)
        {
            var value = i + 1 < args.Count ? args[i + 1] : null;
            if (args[i] is "--data" or "--postgres" or "--port" && value is null) { fault = $"{args[i]} needs a value"; return null; }
            if (args[i] == "--demo") demo = true;
            else if (args[i] == "--data") { file = value; i++; }
            else if (args[i] == "--postgres") { server = value; i++; }
            else if (args[i] == "--port" && int.TryParse(value, out port) && port is > 0 and < 65536) i++;
            else { fault = $"'{args[i]}' is not known here; it may be --data FILE, --postgres CONNECTION, --demo, --port NUMBER"; return null; }
        }
        if (file is not null && server is not null) { fault = "name --data or --postgres, not both"; return null; }
        demo |= server is null && file is null;
        var place = server is not null ? Place.OnServer(server) : file is not null ? Place.InFile(file) : Place.DemoIn(root);
        return new(root, place, demo, port, demo ? Oslemoor.Now : null);
    }
}
