using Umpirage.Rules.Ground;

namespace Umpirage.District.Mechanics;

/// <summary>Where an umpire starts, in words and in feet.</summary>
public sealed record Standing(string Umpire, string Spot, Place? Place);

/// <summary>What one umpire does in a play: the way, then everything that umpire watches and calls.</summary>
public sealed record Work(string Umpire, string? Moves, IReadOnlyList<string> Has);

/// <summary>One thing that is otherwise: what, as it is here, and as it is then or there.</summary>
public sealed record Variation(string What, string Here, string There);

/// <summary>
/// A card of mechanics for one state of the game and one play: signs before the pitch, where everybody stands, who does what, what a catch would change, and
/// what other manuals say. <paramref name="Sources"/> say what it stands on.
/// </summary>
public sealed record Card(
    string Crew, string Code, string Manual, IReadOnlyList<string> Given, IReadOnlyList<string> Signs, IReadOnlyList<Standing> Start, IReadOnlyList<Work> Work,
    IReadOnlyList<Variation> IfCaught, IReadOnlyList<(string Manual, IReadOnlyList<Variation> Otherwise)> Others, IReadOnlyList<string> Sources)
{
    /// <summary>What can be said in ten seconds.</summary>
    public string InTenSeconds
    {
        get
        {
            var lines = new List<string>();
            if (Signs.Count > 0) lines.Add($"Before the pitch all give it: {string.Join(", ", Signs)}.");
            foreach (var work in Work)
            {
                var start = Start.FirstOrDefault(s => s.Umpire == work.Umpire)?.Spot;
                lines.Add($"{Words.Upper(work.Umpire)}: {string.Join("; ", new[] { start is null ? null : $"start {start}", work.Moves }.OfType<string>())}; has {string.Join(", ", work.Has)}.");
            }
            if (IfCaught.Count > 0) lines.Add($"If it is caught: {string.Join(", ", IfCaught.Select(v => $"{v.What} {v.There}"))}.");
            foreach (var (manual, otherwise) in Others.Where(o => o.Otherwise.Count > 0)) lines.Add($"{manual}: {string.Join(", ", otherwise.Select(v => $"{v.What} {v.There}"))}.");
            return string.Join("\n", lines);
        }
    }
}
