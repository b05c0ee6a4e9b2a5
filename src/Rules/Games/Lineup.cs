using System.Collections.Immutable;

namespace Umpirage.Rules.Games;

/// <summary>
/// One side's batting order and field: who holds each spot now, who started there, who has entered how often, who plays where. Orders of
/// nine, ten or everybody are the same thing here. Whether a change was allowed is a question for the sheets, not for the book.
/// </summary>
public sealed record Lineup(ImmutableArray<string> Spots, ImmutableArray<string> Starters, ImmutableDictionary<string, string> Field, ImmutableDictionary<string, int> Entries)
{
    public static Lineup Empty { get; } = new([], [], ImmutableDictionary<string, string>.Empty, ImmutableDictionary<string, int>.Empty);

    /// <summary>Who fields for the designated player without batting, and that player's spot; empty and 0 when there is no such pair.</summary>
    public string Flex { get; init; } = "";
    public int DesignatedSpot { get; init; }

    /// <summary>A player takes a spot (0: fields only) and a position. Before the first pitch it is a start, afterwards a change.</summary>
    public Lineup Enter(int spot, string player, string position, bool started)
    {
        var (spots, starters, field, entries) = (Spots, Starters, Field, Entries);
        if (spot > 0)
        {
            while (spots.Length < spot) { spots = spots.Add(""); starters = starters.Add(""); }
            if (spots[spot - 1] != player)
            {
                spots = spots.SetItem(spot - 1, player);
                if (!started) starters = starters.SetItem(spot - 1, player);
                entries = entries.SetItem(player, entries.GetValueOrDefault(player) + 1);
            }
        }
        else if (!Field.Values.Contains(player)) entries = entries.SetItem(player, entries.GetValueOrDefault(player) + 1);
        if (position != "") field = field.SetItem(position, player);
        return this with { Spots = spots, Starters = starters, Field = field, Entries = entries };
    }

    /// <summary>The spot a player bats in now, from 1; 0 when none.</summary>
    public int SpotOf(string player) => Spots.IndexOf(player) + 1;

    public string At(int spot) => spot >= 1 && spot <= Spots.Length ? Spots[spot - 1] : "";

    public int After(int spot) => Spots.Length == 0 ? 0 : spot % Spots.Length + 1;
}
