namespace Umpirage.District.Visits;

/// <summary>What to work on: an item of the form or a subject of the rules, so that goals can be counted, and the words said to the umpire.</summary>
public sealed record Goal(string About, string Words)
{
    public override string ToString() => $"{About}: {Words}";

    internal static Goal Read(string line) => line.IndexOf(": ", StringComparison.Ordinal) is > 0 and var at ? new(line[..at], line[(at + 2)..]) : new("", line);
}
