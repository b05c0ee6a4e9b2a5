namespace Umpirage.Tests.Twin;

/// <summary>Makes bad input from good: random bytes, or a real text with lines and characters cut, doubled, swapped and strewn.</summary>
public static class Scramble
{
    private const string Strewn = "|<>[]=:;,.@/+()0123456789 \t\n#abcdefgXYZ'\"\u2019\u00e9\ud83d\u0000\\{}";

    private static readonly string[] Words =
        ["Sheet:", "Facts", "Impossible", "Uses", "Decides", "Parameter ", "Must", "Rule ", "Except ", "when ", "and ", "then ", "cite:", "ask:", "edges:", "number of ft from 0 to 9",
         " is ", " is not ", " or ", "prevails over: ", "open to: ", "from 2020-01-01", "until 2019-12-31", "softball", "baseball", "Given", "Expect", "Layer:", "Set ", "From host", "everything else", "| published", "none"];

    /// <summary>A text of at most <paramref name="most"/> characters.</summary>
    public static string Of(Random random, IReadOnlyList<string> seeds, int most)
    {
        if (random.Next(8) == 0) return Noise(random, random.Next(most));
        var lines = seeds[random.Next(seeds.Count)].Split('\n').ToList();
        for (var n = random.Next(1, 12); n > 0 && lines.Count > 0; n--)
        {
            var at = random.Next(lines.Count);
            switch (random.Next(9))
            {
                case 0: lines.RemoveAt(at); break;
                case 1: lines.Insert(at, lines[random.Next(lines.Count)]); break;
                case 2: (lines[at], lines[0]) = (lines[0], lines[at]); break;
                case 3: lines[at] = lines[at][..random.Next(lines[at].Length + 1)]; break;
                case 4: lines[at] = lines[at].Insert(random.Next(lines[at].Length + 1), Noise(random, random.Next(6))); break;
                case 5: lines[at] = lines[at].Insert(random.Next(lines[at].Length + 1), Words[random.Next(Words.Length)]); break;
                case 6: lines.InsertRange(at, seeds[random.Next(seeds.Count)].Split('\n').Skip(random.Next(40)).Take(random.Next(60))); break;
                case 7 when random.Next(20) == 0: lines.InsertRange(at, Enumerable.Repeat(lines[at], random.Next(2_000))); break;
                default: lines[at] = lines[at].Replace(random.Next(2) == 0 ? " is " : "softball", Words[random.Next(Words.Length)]); break;
            }
        }
        var text = string.Join('\n', lines);
        return text.Length <= most ? text : text[..most];
    }

    private static string Noise(Random random, int length) => string.Create(length, random, (span, r) =>
    {
        for (var i = 0; i < span.Length; i++) span[i] = r.Next(30) == 0 ? (char)r.Next(0x10000) : Strewn[r.Next(Strewn.Length)];
    });
}
