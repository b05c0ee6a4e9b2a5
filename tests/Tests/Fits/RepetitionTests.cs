using System.Text.Json;
using Umpirage.District.Fits;

namespace Umpirage.Tests.Fits;

/// <summary>Spaced repetition held against the vectors of open-spaced-repetition/py-fsrs 6.3.1, tests/test_basic.py (MIT); FSRS-6, no random spread.</summary>
public class RepetitionTests
{
    private static readonly DateTime First = new(2022, 11, 29, 12, 30, 0, DateTimeKind.Utc);

    private static Recall Of(string word) => Enum.Parse<Recall>(word, true);

    private static List<int> Intervals(IEnumerable<Recall> recalls)
    {
        var (card, now, days) = (Card.New, First, new List<int>());
        foreach (var recall in recalls)
        {
            card = Repetition.Review(card, recall, now);
            days.Add((card.Due!.Value - card.Last!.Value).Days);
            now = card.Due.Value;
        }
        return days;
    }

    [Fact]
    public void Intervals_are_the_published_ones()
    {
        const Recall g = Recall.Good, a = Recall.Again;
        Assert.Equal([0, 2, 11, 46, 163, 498, 0, 0, 2, 4, 7, 12, 21], Intervals([g, g, g, g, g, g, a, a, g, g, g, g, g]));
    }

    [Fact]
    public void Stability_and_difficulty_are_the_published_ones()
    {
        var (card, now) = (Card.New, First);
        foreach (var (recall, days) in new[] { Recall.Again, Recall.Good, Recall.Good, Recall.Good, Recall.Good, Recall.Good }.Zip((int[])[0, 0, 1, 3, 8, 21]))
        {
            now = now.AddDays(days);
            card = Repetition.Review(card, recall, now);
        }
        // full digits from ts-fsrs 5.4.2 (MIT), which agrees with py-fsrs; it rounds every step to eight decimals, which moves the stability by 3 parts in 10^8
        Assert.Equal(1, card.Stability / 53.62690465, 1e-6);
        Assert.Equal(6.35748708, card.Difficulty, 1e-6);
    }

    [Fact]
    public void Ten_easy_reviews_reach_the_least_difficulty_and_an_unreviewed_card_is_not_recalled()
    {
        var (card, now) = (Card.New, First);
        for (var i = 0; i < 10; i++) { card = Repetition.Review(card, Recall.Easy, now); now = now.AddMicroseconds(1); }
        Assert.Equal(1.0, card.Difficulty);
        Assert.Equal(0, Repetition.Retrievability(Card.New, now));
    }

    [Fact]
    public void After_its_stability_in_days_a_card_is_recalled_nine_times_in_ten()
    {
        var card = new Card(Stage.Review, 0, 30, 5, First, First.AddDays(30));
        Assert.Equal(0.9, Repetition.Retrievability(card, First.AddDays(30)), 1e-12);
        Assert.True(Repetition.Retrievability(card, First.AddDays(60)) < 0.9);
    }

    [Fact]
    public void All_vectors_of_the_shared_file_hold()
    {
        if (Folder.Shared("data", "fsrs", "vectors.json") is not { } file) return;
        using var json = JsonDocument.Parse(File.ReadAllText(file));
        Assert.Equal(json.RootElement.GetProperty("weights").EnumerateArray().Select(w => w.GetDouble()), Repetition.Weights);
        foreach (var one in json.RootElement.GetProperty("cases").EnumerateArray())
        {
            if (!one.TryGetProperty("ratings", out var words)) continue;
            List<Recall> recalls = [.. words.EnumerateArray().Select(w => Of(w.GetString()!))];
            if (one.TryGetProperty("expected_interval_days", out var days)) Assert.Equal(days.EnumerateArray().Select(d => d.GetInt32()), Intervals(recalls));
            if (!one.TryGetProperty("expected_stability", out var stability)) continue;
            var (card, now) = (Card.New, First);
            foreach (var (recall, wait) in recalls.Zip(one.GetProperty("days_before_each_review").EnumerateArray())) card = Repetition.Review(card, recall, now = now.AddDays(wait.GetInt32()));
            Assert.Equal(stability.GetDouble(), card.Stability, one.GetProperty("tolerance").GetDouble());
            Assert.Equal(one.GetProperty("expected_difficulty").GetDouble(), card.Difficulty, 1e-6);
        }
    }
}
