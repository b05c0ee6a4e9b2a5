using System.Text.Encodings.Web;
using System.Text.Json;

namespace Umpirage.Cli;

internal static class Json
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static void Write<T>(T value) => Console.WriteLine(JsonSerializer.Serialize(value, Readable));
}
