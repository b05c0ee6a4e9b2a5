using System.Text;

namespace Umpirage.Tests.Store;

/// <summary>Spoils a file as disks, spreadsheets and people do.</summary>
internal static class Spoil
{
    public static byte[] Of(Random random, byte[] sound, IReadOnlyList<byte[]> others)
    {
        var bytes = sound;
        for (var times = random.Next(1, 4); times > 0; times--) bytes = Once(random, bytes, others);
        return bytes;
    }

    private static byte[] Once(Random random, byte[] bytes, IReadOnlyList<byte[]> others)
    {
        switch (random.Next(16))
        {
            case 0: return Bytes(bytes, b => { for (var n = random.Next(1, 6); n > 0 && b.Count > 0; n--) b[random.Next(b.Count)] ^= (byte)(1 << random.Next(8)); });
            case 1: return Bytes(bytes, b => { if (b.Count > 0) b.RemoveRange(random.Next(b.Count), 1); });
            case 2: return Bytes(bytes, b => b.InsertRange(random.Next(b.Count + 1), Invalid[random.Next(Invalid.Length)]));
            case 3: return [.. "\uFEFF"u8, .. bytes];
            case 4: return bytes[..random.Next(bytes.Length + 1)];
        }
        var text = Encoding.UTF8.GetString(bytes);
        List<string> lines = [.. text.Split("\r\n")];
        var at = random.Next(lines.Count);
        switch (random.Next(12))
        {
            case 0: lines.RemoveAt(at); break;
            case 1: lines.Insert(random.Next(lines.Count + 1), lines[at]); break;
            case 2: Column(lines, random, (cells, c) => cells.RemoveAt(c)); break;
            case 3: Column(lines, random, (cells, c) => cells.Insert(c, cells[c])); break;
            case 4: Cell(lines, at, random, (cells, c) => { var other = random.Next(cells.Count); (cells[c], cells[other]) = (cells[other], cells[c]); }); break;
            case 5: Cell(lines, at, random, (cells, c) => cells[c] = Odd[random.Next(Odd.Length)]); break;
            case 6: Cell(lines, at, random, (cells, c) => cells[c] = new string("ab\"=; "[random.Next(6)], random.Next(3) == 0 ? 300_000 : random.Next(1, 400))); break;
            case 7: lines[at] += new string(',', random.Next(1, 2000)); break;
            case 8: lines[at] = lines[at].Insert(random.Next(lines[at].Length + 1), "\""); break;
            case 9: lines.InsertRange(at, Enumerable.Repeat("", random.Next(1, 4))); break;
            case 10: return Encoding.UTF8.GetBytes(text.Replace("\r\n", random.Next(2) == 0 ? "\n" : "\r"));
            default: lines[at] = Line(random, others[random.Next(others.Count)]); break;
        }
        return Encoding.UTF8.GetBytes(string.Join("\r\n", lines));
    }

    private static readonly byte[][] Invalid = [[0xC0], [0xFF, 0xFE], [0], [0xED, 0xA0, 0x80], [0xF8], [0x80], [0x1B], [0x7F], [0xC2, 0x85], [0xE2, 0x80, 0xA8],
        [0xF0, 0x9F, 0x8E, 0xBE]];

    private static readonly string[] Odd =
    [
        "", " ", "=1+1", "'=1+1", "-1", "+", "@", "0", "-0", "1e9", "99999999999", "NaN", "∞", "0001-01-01", "9999-12-31", "2026-02-30", "24:00", "23:59", "yes", "no",
        "adult", "13-15", "umpire", "youth umpire", "manager of TAR-1",
        "president of ", "umpire; Umpire", "chief of x", "mother; mother", "mother", "youth-1", "youth-2", "UMPIRE-1", " umpire-1", "tarnholt", "TAR-1", "G-1", "\"a\r\nb\"",
        "\"\"\"\"", "\"a,b\"", "\t", "x\ty", "１２", "é", "played", "published",
    ];

    private static byte[] Bytes(byte[] bytes, Action<List<byte>> deed)
    {
        List<byte> list = [.. bytes];
        deed(list);
        return [.. list];
    }

    private static string Line(Random random, byte[] file)
    {
        var lines = Encoding.UTF8.GetString(file).Split("\r\n");
        return lines[random.Next(lines.Length)];
    }

    private static void Cell(List<string> lines, int at, Random random, Action<List<string>, int> deed)
    {
        List<string> cells = [.. lines[at].Split(',')];
        deed(cells, random.Next(cells.Count));
        lines[at] = string.Join(',', cells);
    }

    private static void Column(List<string> lines, Random random, Action<List<string>, int> deed)
    {
        var column = random.Next(lines[0].Split(',').Length);
        for (var i = 0; i < lines.Count; i++)
        {
            List<string> cells = [.. lines[i].Split(',')];
            if (column < cells.Count) deed(cells, column);
            lines[i] = string.Join(',', cells);
        }
    }
}
