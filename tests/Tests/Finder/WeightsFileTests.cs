using Umpirage.Finder;

namespace Umpirage.Tests.Finder;

/// <summary>The file of what was learned: it comes back as it was written, and one that is broken or of another version is not taken.</summary>
public class WeightsFileTests
{
    private static Learned Small { get; } = new()
    {
        Key = "a sum", Figures = "some figures\n",
        Changes = [new("a table", 1, [1, 2], [0.5f, 0, -1])],
        Subjects = [new("walk", Filled(0.25f), -1, [new("balls", "four", [1, 0], [0, 1], -2)]), new("", Filled(-0.25f), 0.5f, [])],
        Terms = new(["bas", "~runner"], [2, 3], [0.01f, 0.5f], [100, -100, 1, 0], 2),
        Facts = new(new float[Encoder.Size * 2], new float[Encoder.Size * 2]),
        Floors = new(0.1f, 0.9f, 20, -3), Middle = Filled(0),
    };

    private static float[] Filled(float with)
    {
        var numbers = new float[Encoder.Size];
        Array.Fill(numbers, with);
        return numbers;
    }

    private static byte[] Written()
    {
        using var file = new MemoryStream();
        LearnedFile.Write(file, Small);
        return file.ToArray();
    }

    [Fact]
    public void What_was_written_is_read()
    {
        var read = LearnedFile.Read(new MemoryStream(Written()))!;
        Assert.Equal(("a sum", "some figures\n", Small.Floors), (read.Key, read.Figures, read.Floors));
        Assert.Equal(["walk", ""], read.Subjects.Select(s => s.Name));
        Assert.Equal(Small.Subjects[0].Takes, read.Subjects[0].Takes);
        Assert.Equal(("balls", "four", -2f), (read.Subjects[0].Labels[0].Fact, read.Subjects[0].Labels[0].Value, read.Subjects[0].Labels[0].Bias));
        Assert.Equal([0f, 1], read.Subjects[0].Labels[0].Takes);
        Assert.Equal([0.5f, 0, -1], read.Changes[0].Wide);
        Assert.Equal((2, 3), (read.Changes[0].Rows, read.Changes[0].Columns));
    }

    [Fact]
    public void Terms_speak_for_their_subjects()
    {
        // "base" is cut to "bas"; one term of weight 2 fills the whole length of 2; 100 hundredths for the first subject, as much against the second
        var scores = new float[2];
        Small.Terms.Add(Synonyms.Read("", "", []).Hear("base"), scores);
        Assert.Equal(2, scores[0], 1e-4);
        Assert.Equal(-2, scores[1], 1e-4);
    }

    [Fact]
    public void A_file_cut_short_anywhere_is_not_taken()
    {
        var whole = Written();
        for (var length = 0; length < whole.Length; length += 97) Assert.Null(LearnedFile.Read(new MemoryStream(whole[..length])));
        Assert.Null(LearnedFile.Read(new MemoryStream(whole[..^1])));
    }

    [Fact]
    public void A_file_of_another_version_is_not_taken()
    {
        var other = Written();
        other[5]++;
        Assert.Null(LearnedFile.Read(new MemoryStream(other)));
    }
}
