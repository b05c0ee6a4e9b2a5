namespace Umpirage.District.Cards;

/// <summary>A card as an instructor lays it out: what stands on it, in which order and words. Read from codes/cards.</summary>
/// <param name="Order">For a card of differences: values in the order of their consequence.</param>
public sealed record CardPlan(string Name, string Title, LeafKind Kind, IReadOnlyList<CardItem> Items, IReadOnlyList<Spoken> Order)
{
    /// <summary>Names of what is made of people.</summary>
    public const string OfCrew = "crew", OfPitchers = "who may pitch";

    public bool Makes(string name) => Items.Any(i => i is CardItem.Made m && m.Name == name);
}

/// <summary>A line of a plan.</summary>
public abstract record CardItem
{
    private CardItem() { }

    /// <summary>Something that stands there as it is.</summary>
    public sealed record Fixed(CardPart Part) : CardItem;

    /// <summary>A value of the code in words; <paramref name="Joined"/>: in the same line as what stands before it.</summary>
    public sealed record Value(Spoken Spoken, bool Joined = false) : CardItem;

    /// <summary>Something worked out for the game, by its name.</summary>
    public sealed record Made(string Name) : CardItem;

    /// <summary>What is done so many minutes before the game starts, told by the time of the day.</summary>
    public sealed record Before(int Minutes, string Words) : CardItem;

    /// <summary>What is wrong with a piece of gear under the code: the values of one fact that do not pass.</summary>
    public sealed record Faults(string Sheet, string Fact, string Words) : CardItem;
}
