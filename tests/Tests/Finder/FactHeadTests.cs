using Umpirage.Finder;

namespace Umpirage.Tests.Finder;

/// <summary>
/// A hand-made head: of each word's numbers the first two count; a label listens to one of them and takes it. Expected values are worked out
/// beside each test.
/// </summary>
public class FactHeadTests
{
    private const float Loud = 20;

    private static FactHead Head()
    {
        var first = new float[Encoder.Size * 2];
        (first[0], first[3]) = (1, 1); // the first number goes to the first place, the second to the second
        return new(first, first);
    }

    private static Meaning Words(params (float First, float Second)[] words)
    {
        var numbers = new float[words.Length * Encoder.Size];
        for (var w = 0; w < words.Length; w++) (numbers[w * Encoder.Size], numbers[w * Encoder.Size + 1]) = words[w];
        return new(new float[Encoder.Size], numbers);
    }

    private static FactLabel[] Labels { get; } = [new("ball", "fair", [Loud, 0], [1, 0], 0), new("ball", "foul", [0, Loud], [0, 1], 0), new("outs", "two", [Loud, 0], [0, 0], -100)];

    [Fact]
    public void A_value_is_said_by_the_word_it_listens_to()
    {
        var read = Head().Read(Words((0.1f, 0), (4, 0), (0.1f, 0)), Labels);
        Assert.Equal(["ball", "outs"], read.Select(r => r.Fact));
        Assert.Equal(1, read[0].Words[0][1], 1e-4); // all attention on the second word
        // fair: 4 taken, times 2 over the root of 2 = 5.657; foul and unsaid: 0; so e^5.657 of e^5.657 + 2
        Assert.Equal(Math.Exp(5.657) / (Math.Exp(5.657) + 2), read[0].Said[0], 1e-4);
        Assert.Equal(1 / (Math.Exp(5.657) + 2), read[0].Unsaid, 1e-4);
    }

    [Fact]
    public void What_nothing_speaks_for_is_unsaid() => Assert.Equal(1, Head().Read(Words((4, 0)), Labels)[1].Unsaid, 1e-6);

    [Fact]
    public void A_word_the_model_did_not_hold_is_not_listened_to()
    {
        var read = Head().Read(Words((4, 0), (0, 0)), Labels);
        Assert.Equal(0, read[0].Words[0][1]);
        Assert.Empty(Head().Read(Words((0, 0)), Labels));
    }

    [Theory]
    [InlineData(1, 1, 0.1, 0.7, 0.1, 0.1)]       // one word holds half alone
    [InlineData(1, 2, 0.1, 0.3, 0.3, 0.3)]       // it grows to the heavier side until half is held
    [InlineData(0, 1, 0.3, 0.4, 0.1, 0.2)]
    [InlineData(0, 0, 1.0)]
    public void The_telling_words_are_a_run_about_the_loudest(int first, int last, params double[] words) =>
        Assert.Equal((first, last), FactReader.Telling([.. words.Select(w => (float)w)], _ => false));

    [Fact]
    public void A_small_word_does_not_stand_alone() => Assert.Equal((1, 2), FactReader.Telling([0.05f, 0.8f, 0.15f], w => w < 2)); // it takes the louder neighbour along
}
