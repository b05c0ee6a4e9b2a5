using Umpirage.Finder;
using Umpirage.Rules.Codes;
using Umpirage.Tune;

namespace Umpirage.Tests.Tune;

/// <summary>The layers give what the model itself gives, and the slopes are what small differences say.</summary>
public class SlopeTests
{
    private const string Text = """
        Sheet: walk
        group: batting
        about: A batter goes to first.

        Facts
          balls : three | four
            ask: How many balls were called?
          bases : empty | full
            ask: Who is on base?

        Decides
          batter : walks | stays

        Rule R1: four balls
          cite: a book | common practice, no source
          then batter is stays
          Except R1a: the fourth
            cite: a book | common practice, no source
            when balls is four
            then batter is walks
        """;

    private static readonly Course Plain = new() { Threads = 1, WordsOut = 0, WholeOut = 0, NumbersOut = 0, TermsOut = 0, RareTerm = 1 };
    private static readonly byte[] Model = Encoder.Bare();

    private static (LabelBook Labels, List<Lesson> Lessons) Small(LowerLayers layers)
    {
        var book = Codebook.Read(("roster.txt", "games: softball"), [new("walk.sheet", Text)]);
        var synonyms = Synonyms.Read("", "", []);
        var asked = new SourceText("walk.asked", $"Asked: walk\n\n{Lessons.Mark}\n\n  The ump called ball four with nobody on, does she go?\n    balls is four: ball four\n    bases is empty: nobody on\n\n  Three balls so far, she waits.\n    balls is three: Three balls\n");
        IReadOnlyList<Sheet> sheets = [.. book.Sheets];
        return (new(sheets, synonyms, layers), Lessons.Of(book, sheets, new([], [asked], [], new("", "")), synonyms, ["how do I boil an egg"], layers));
    }

    [Theory]
    [InlineData("The runner from third left before the pitcher let go of the ball, and was tagged.")]
    [InlineData("hbp?")]
    public void The_layers_give_what_the_model_gives(string words)
    {
        using var layers = new LowerLayers(Model);
        var (pieces, between, last) = layers.Of(Synonyms.Read("", "", []).Hear(words));
        var network = new Network(Plain, Model, Small(layers).Labels, [], 1);
        foreach (var (here, there) in network.Through(between, [0, pieces.Length]).Zip(last)) Assert.Equal(there, here, 1e-4f);
    }

    [Fact]
    public void Slopes_are_what_small_differences_say()
    {
        using var layers = new LowerLayers(Model);
        var (labels, lessons) = Small(layers);
        Assert.Equal((2, 1), (lessons.Count(l => l.Complete), lessons.Count(l => l.Source == Source.Unrelated)));
        var network = new Network(Plain, Model, labels, lessons, 1);
        var chance = new Random(5);
        foreach (var weights in network.All.Where(w => w.Name.EndsWith(" wide", StringComparison.Ordinal) || w.Name.StartsWith("own", StringComparison.Ordinal) || w.Name == "subjects")) weights.Scattered(chance, 0.05f);
        network.Step(0);
        network.Learn(lessons, 0, 1);
        foreach (var weights in network.All)
        {
            var steepest = Enumerable.Range(0, weights.Numbers.Length).MaxBy(i => Math.Abs(weights.Slopes(0)[i]));
            var (slope, number, small) = (weights.Slopes(0)[steepest], weights.Numbers[steepest], 1e-2f * Math.Max(0.1f, Math.Abs(weights.Numbers[steepest])));
            double At(float value)
            {
                weights.Numbers[steepest] = value;
                network.Merge();
                return Measured.Loss(network, Plain, labels, lessons);
            }
            Assert.Equal((At(number + small) - At(number - small)) / (2 * small), slope, 0.02 * Math.Abs(slope) + 2e-3);
            At(number);
        }
    }
}
