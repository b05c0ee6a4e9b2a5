using System.Collections.Immutable;

namespace Umpirage.Rules.Games;

/// <summary>
/// A game at one moment. Immutable: an event makes a new one, so a game can be taken back or resumed to the pitch. Made only by
/// <see cref="Scorekeeper"/>; a described event becomes part of it only when it can have happened.
/// </summary>
public sealed record Game
{
    public static Game New { get; } = new();

    public int Inning { get; init; } = 1;
    public Side Batting { get; init; }
    public int Outs { get; init; }
    public Count Count { get; init; }
    /// <summary>Who is on first, second and third; empty when nobody is.</summary>
    public string First { get; init; } = "";
    public string Second { get; init; } = "";
    public string Third { get; init; } = "";
    public Book Visitors { get; init; } = Book.Empty;
    public Book Home { get; init; } = Book.Empty;
    public Lineup VisitorLineup { get; init; } = Lineup.Empty;
    public Lineup HomeLineup { get; init; } = Lineup.Empty;
    /// <summary>The spot due to bat next, visitors and home.</summary>
    public int VisitorDue { get; init; } = 1;
    public int HomeDue { get; init; } = 1;
    public bool Started { get; init; }
    public bool Over { get; init; }
    public bool Alive { get; init; } = true;
    public int DefensiveConferences { get; init; }
    public int OffensiveConferences { get; init; }
    public ImmutableDictionary<string, int> PitchesBy { get; init; } = ImmutableDictionary<string, int>.Empty;
    public ImmutableArray<string> Notes { get; init; } = [];
    /// <summary>How long what happened in the last play may still be appealed; empty when it no longer can. The windows of a code: sheet "appeal window".</summary>
    public string Appeals { get; init; } = "";
    /// <summary>When and why time was called, and when play went on.</summary>
    public ImmutableArray<string> Stoppages { get; init; } = [];
    /// <summary>How many events made this game.</summary>
    public int Events { get; init; }

    public int OnBase => (First == "" ? 0 : 1) + (Second == "" ? 0 : 1) + (Third == "" ? 0 : 1);
    public Side Fielding => Batting == Side.Visitors ? Side.Home : Side.Visitors;
    public Book BookOf(Side side) => side == Side.Visitors ? Visitors : Home;
    public Lineup LineupOf(Side side) => side == Side.Visitors ? VisitorLineup : HomeLineup;
    public int Due(Side side) => side == Side.Visitors ? VisitorDue : HomeDue;
    public string Batter => LineupOf(Batting).At(Due(Batting));
    public string On(Place place) => place switch { Place.First => First, Place.Second => Second, Place.Third => Third, _ => "" };

    /// <summary>The base a player is on; null when on none.</summary>
    internal Place? PlaceOf(string player) => First == player ? Place.First : Second == player ? Place.Second : Third == player ? Place.Third : null;

    /// <summary>The proof of the scorebook for both sides; the side at bat may still have runners on.</summary>
    public bool Proves => BookOf(Batting).Proves(OnBase) && BookOf(Fielding).Proves(0);

    public Game With(Side side, Book book) => side == Side.Visitors ? this with { Visitors = book } : this with { Home = book };
    public Game With(Side side, Lineup lineup) => side == Side.Visitors ? this with { VisitorLineup = lineup } : this with { HomeLineup = lineup };
    public Game WithDue(Side side, int spot) => side == Side.Visitors ? this with { VisitorDue = spot } : this with { HomeDue = spot };

    /// <summary>"top 3, 1 out, first and third, 2-1, visitors 4 home 2".</summary>
    public string InWords
    {
        get
        {
            var on = new[] { (First, "first"), (Second, "second"), (Third, "third") }.Where(b => b.Item1 != "").Select(b => b.Item2).ToList();
            return $"{(Batting == Side.Visitors ? "top" : "bottom")} {Inning}, {Outs} out, {(on.Count == 0 ? "bases empty" : Ground.Words.And(on))}, {Count}, visitors {Visitors.Runs} home {Home.Runs}";
        }
    }
}
