using Umpirage.Tune;

namespace Umpirage.Tests.Tune;

/// <summary>The limit from which on readings are believed; counted by hand.</summary>
public class LimitTests
{
    private static readonly (float, bool)[] Readings = [(0.9f, true), (0.8f, true), (0.7f, false), (0.6f, true), (0.5f, false)];

    [Theory]
    [InlineData(1, 0.8)]     // two of two; with the third two of three
    [InlineData(0.75, 0.6)]  // three of four
    [InlineData(0.6, 0.5)]   // three of five
    public void It_is_as_low_as_the_share_allows(double share, double limit) => Assert.Equal(limit, Limit.Of(Readings, share), 1e-6);

    [Fact]
    public void Readings_of_one_chance_stand_or_fall_together() => Assert.Equal(1, Limit.Of([(0.9f, true), (0.9f, false)], 1));

    [Fact]
    public void Without_readings_nothing_is_believed() => Assert.Equal(1, Limit.Of([], 0.5));
}
