using System.Globalization;

namespace Umpirage.District.Diamonds;

/// <summary>How a distance of the ground stands to what a code asks.</summary>
public enum Stands { AsAsked, TooNearToTell, Off }

/// <summary>One distance a code asks, what it is on the ground and how sure that is (standard deviation), in feet.</summary>
public sealed record Held(string From, string To, double Asked, double Found, double Deviation, Stands Stands)
{
    public string InWords => $"{From} to {To}: {Tape.Told(Found)}, asked {Tape.Told(Asked)}"
        + (Stands == Stands.AsAsked ? "" : $", {Tape.Told(Math.Abs(Found - Asked))} {(Found > Asked ? "too long" : "too short")}{(Stands == Stands.TooNearToTell ? " (too near to tell: tape again)" : "")}");
}

/// <summary>A point that has to be moved for a code: how far and which way, and what the tapes must read afterwards.</summary>
public sealed record Move(string Mark, At From, At To, string Toward, IReadOnlyList<Diagonal> Then)
{
    public double Feet => From.To(To);

    public string InWords => $"move {Mark} {Tape.Told(Feet)} {Toward}; then {string.Join(" and ", Then.Select(t => $"{Tape.Told(t.Reading)} to {t.To}"))}";
}

/// <summary>Whether a surveyed diamond serves one code: the distances, the points nobody taped, and the smallest move that mends it.</summary>
public sealed record Serving(Layout Layout, double Grace, IReadOnlyList<Held> Held, IReadOnlyList<string> NotTaped, IReadOnlyList<Move> Moves)
{
    public Stands Stands => Held.Any(h => h.Stands == Stands.Off) ? Stands.Off : Held.Any(h => h.Stands == Stands.TooNearToTell) ? Stands.TooNearToTell : Stands.AsAsked;

    public string InWords => Told($"{Layout.Code.Address}");

    /// <param name="name">What the division is called.</param>
    public string Told(string name)
    {
        var grace = (Grace * 12).ToString("0.###", CultureInfo.InvariantCulture);
        return Stands switch
        {
            Stands.AsAsked => $"{name}: serves, every distance taped within {grace} in{(NotTaped.Count == 0 ? "" : $"; not taped: {string.Join(", ", NotTaped)}")}",
            Stands.TooNearToTell => $"{name}: too near to tell, {string.Join("; ", Held.Where(h => h.Stands != Stands.AsAsked).Select(h => h.InWords))}",
            _ => $"{name}: does not serve; {string.Join("; ", Held.Where(h => h.Stands != Stands.AsAsked).Select(h => h.InWords))}",
        };
    }
}
