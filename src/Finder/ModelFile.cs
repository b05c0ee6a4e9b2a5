using System.Text;

namespace Umpirage.Finder;

/// <summary>
/// Finds the tables of numbers in a model file (ONNX, a message of nested fields: protobuf), so that they can be changed in place. It reads
/// no more of the format than that.
/// </summary>
internal static class ModelFile
{
    private const int Graph = 7, Table = 5, TableName = 8, TableNumbers = 9;

    /// <summary>For each table its place in the bytes. A table whose numbers do not lie there as raw bytes is left out.</summary>
    /// <exception cref="FormatException">The bytes are no such message.</exception>
    public static Dictionary<string, Range> Tables(ReadOnlySpan<byte> model)
    {
        var tables = new Dictionary<string, Range>(StringComparer.Ordinal);
        foreach (var graph in Graphs(model))
            foreach (var table in Fields(model, graph, Table))
                if (Fields(model, table, TableName) is [var name, ..] && Fields(model, table, TableNumbers) is [var numbers, ..]) tables[Encoding.UTF8.GetString(model[name])] = numbers;
        return tables;
    }

    /// <summary>Where the model's graph lies, which holds the tables.</summary>
    public static IReadOnlyList<Range> Graphs(ReadOnlySpan<byte> model) => Fields(model, 0..model.Length, Graph);

    /// <summary>The places of a message's fields of one number; only fields with a length are returned.</summary>
    private static List<Range> Fields(ReadOnlySpan<byte> bytes, Range message, int wanted)
    {
        var found = new List<Range>();
        var (at, end) = (message.Start.Value, message.End.Value);
        while (at < end)
        {
            var head = Number(bytes, ref at);
            switch (head & 7)
            {
                case 0: Number(bytes, ref at); break;
                case 1: at += 8; break;
                case 5: at += 4; break;
                case 2:
                    var length = (long)Number(bytes, ref at);
                    if (length < 0 || length > end - at) throw new FormatException($"byte {at}: a field of {length} bytes does not fit into its message");
                    if ((int)(head >> 3) == wanted) found.Add(at..(at + (int)length));
                    at += (int)length;
                    break;
                default: throw new FormatException($"byte {at}: kind {head & 7} of field is not known; it may be 0, 1, 2 or 5");
            }
        }
        return found;
    }

    private static ulong Number(ReadOnlySpan<byte> bytes, ref int at)
    {
        ulong number = 0;
        for (var shift = 0; shift < 64; shift += 7)
        {
            if (at >= bytes.Length) throw new FormatException($"the bytes end within a number, at {at}");
            var part = bytes[at++];
            number |= (ulong)(part & 127) << shift;
            if (part < 128) return number;
        }
        throw new FormatException($"byte {at}: a number is longer than 64 bits");
    }
}
