using Umpirage.Finder;

namespace Umpirage.Tests.Finder;

/// <summary>A subject that came later is claimed only by words that are like what is said of it.</summary>
public class NewSubjectTests
{
    [Fact]
    public void Three_in_four_of_its_own_examples_reach_the_floor()
    {
        // three alike and two apart; each is held against the other four
        (float X, float Y)[] said = [(1, 0), (1, 0), (1, 0), (0.6f, 0.8f), (0, 1)];
        Example[] examples = [.. said.Select(s => new Example(0, Origin.Asked, Utterance.Empty with { Text = $"{s.X} {s.Y}" }, []))];
        var at = 0;
        var subject = Assert.Single(NewSubjects.Of(examples, 1, _ =>
        {
            var whole = new float[Encoder.Size];
            (whole[0], whole[1]) = said[at++];
            return new(whole, []);
        }));
        Assert.Equal(1, Math.Sqrt(subject.Direction.Sum(d => d * d)), 5);
        var like = said.Select((s, i) =>
        {
            var others = said.Where((_, j) => j != i).ToList();
            var (x, y) = (others.Sum(o => o.X), others.Sum(o => o.Y));
            return (s.X * x + s.Y * y) / MathF.Sqrt(x * x + y * y);
        }).Order().ToList();
        Assert.Equal(like[1], subject.Floor, 5);
    }
}
