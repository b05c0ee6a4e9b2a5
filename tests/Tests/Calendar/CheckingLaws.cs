using CsCheck;
using Umpirage.District.Calendar;
using Umpirage.District.People;
using static Umpirage.Tests.Calendar.Tiny;

namespace Umpirage.Tests.Calendar;

/// <summary>What holds of every schedule, on small crowded ones made at random.</summary>
public class CheckingLaws
{
    private static readonly Surroundings Open = World();
    private static readonly string[] Diamonds = ["mill-1", "mill-2", "common-1"];
    private static readonly Division[] Kinds = [Soft12, Soft14];

    private static readonly Gen<ScheduledGame[]> Crowded =
        Gen.Select(Gen.Int[0, 1], Gen.Int[0, 5], Gen.Int[1, 5], Gen.Int[0, 2], Gen.Int[0, 4], Gen.Int[0, 4], Gen.Int[0, 9], (kind, home, step, diamond, day, hour, status) => (kind, home, step, diamond, day, hour, status))
            .Array[2, 24].Select(games => games.Select((g, i) => Game($"{i:00}", Kinds[g.kind], $"{"ABCDEF"[g.home]}{"ABCDEF"[(g.home + g.step) % 6]}", Diamonds[g.diamond], At(9 + 3 * g.hour, 15 * g.home, days: g.day),
                g.status switch { 0 => GameStatus.RainedOut, 1 => GameStatus.Suspended, 2 => GameStatus.Moved, _ => GameStatus.Planned }, g.status == 3 && i > 0 ? "00" : null)).ToArray());

    private static List<string> Keys(Surroundings world, IEnumerable<ScheduledGame> games) => [.. Checking.Of(new(world, games)).Select(v => v.Key)];

    [Fact]
    public void The_order_of_the_games_does_not_matter() =>
        Crowded.Sample(games => Assert.Equal(Keys(Open, games), Keys(Open, games.Reverse().OrderBy(g => g.Key[^1]))), iter: Folder.Count(300, 20_000));

    [Fact]
    public void A_closed_day_more_never_takes_a_violation_away() =>
        Gen.Select(Crowded, Gen.Int[0, 4], Gen.Int[0, 2]).Sample((games, day, diamond) =>
            Assert.Subset(Keys(World(closed: [new(BlackoutOf.Diamond, Diamonds[diamond], Saturday.AddDays(day).ToDay(), Saturday.AddDays(day).ToDay(), "rain")]), games).ToHashSet(), Keys(Open, games).ToHashSet()), iter: Folder.Count(100, 5_000));

    [Fact]
    public void What_a_game_breaks_is_seen_from_its_neighbourhood_alone() =>
        Crowded.Sample(games =>
        {
            var schedule = new Schedule(Open, games);
            foreach (var game in schedule.Standing)
                Assert.Equal(
                    [.. Checking.Constraints.SelectMany(c => c.Find(schedule)).Where(v => v.Names(game.Key)).Select(v => v.Key).Order()],
                    Checking.Of(schedule, game).Select(v => v.Key).Order().ToList());
        }, iter: Folder.Count(100, 5_000));

    [Fact]
    public void A_mend_mends_and_breaks_nothing() =>
        Crowded.Sample(games =>
        {
            var schedule = new Schedule(Open, games);
            var before = Checking.Of(schedule);
            foreach (var violation in before.Where(v => v.Hard).Take(3))
            {
                if (new Mending(schedule, At(0)).Of(violation).Mend is not { } mend) continue;
                var after = Checking.Of(schedule.With(schedule.Game(mend.Game)! with { Diamond = mend.Diamond, Start = mend.Start }));
                Assert.DoesNotContain(after, v => v.Key == violation.Key);
                Assert.DoesNotContain(after, v => v.Hard && v.Names(mend.Game));
            }
        }, iter: Folder.Count(30, 1_000));
}

internal static class Days
{
    public static DateOnly ToDay(this DateTime at) => DateOnly.FromDateTime(at);
}
