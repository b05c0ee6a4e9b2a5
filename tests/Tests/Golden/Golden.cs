namespace Umpirage.Tests.Golden;

/// <summary>
/// Compares a text with the one on record. Run with UMPIRAGE_RECORD=1 to record anew: whoever does so answers for every line of the difference.
/// </summary>
internal static class Golden
{
    public static void Compare(string actual, params string[] path)
    {
        var file = Folder.Of(path);
        actual = actual.ReplaceLineEndings("\n");
        if (Environment.GetEnvironmentVariable("UMPIRAGE_RECORD") is { Length: > 0 })
        {
            Console.Error.WriteLine($"recording {Path.Combine(path)} anew: read the difference before you commit, it is yours");
            File.WriteAllText(file, actual);
        }
        Assert.True(File.Exists(file), $"{Path.Combine(path)} is not on record");
        Assert.Equal(File.ReadAllText(file).ReplaceLineEndings("\n"), actual);
    }
}
