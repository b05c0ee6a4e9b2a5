using System.Text;
using Umpirage.District.Diamonds;

namespace Umpirage.District.Clinic;

/// <summary>One answer offered. <paramref name="Had"/>: the sentence with which it would have been right; null when no single change makes it so.</summary>
public sealed record Choice(string Text, bool Right, string? Had);

/// <summary>
/// A question drawn from a decision table: the situation in plain words, what is asked, the answers offered, and why. <paramref name="Given"/> is the same
/// situation in the sheet's words, from which the engine can rule it again. The id stays the same as long as the facts asked with do. <paramref name="Caution"/>
/// is said with the answer wherever the question is asked.
/// </summary>
public sealed record Question(
    string Id, string Sheet, string Group, string Code, string Decision, string Rule, string Situation, IReadOnlyList<string> Given, string Ask,
    IReadOnlyList<Choice> Choices, string Title, string? Reason, string Source, bool Verified, string? Caution)
{
    /// <summary>The answer that is right.</summary>
    public string Answer => Choices.First(c => c.Right).Text;

    /// <summary>What a learner forgets and learns: a rule of a subject in one game, however it is asked.</summary>
    public string Unit { get; } = $"{Code.Split('/')[0]}: {Sheet}: {Rule}: {Decision}";

    /// <summary>What is asked of which play: the same for one question under any code of its game.</summary>
    public string Case { get; } = $"{Sheet}: {Decision}: {string.Join("; ", Given)}";

    /// <summary>The situation drawn, as the picture of its sheet draws it; null when nothing of it can be drawn.</summary>
    public Drawing? Drawn(IReadOnlyDictionary<string, Picture> pictures) => pictures.TryGetValue(Sheet, out var picture) ? Drawing.Of(picture, Given) : null;

    /// <summary>The question as a .play file, its answer as what is expected.</summary>
    public string Play
    {
        get
        {
            var text = new StringBuilder().AppendLine($"Play: {Id}").AppendLine($"code: {Code}").AppendLine($"sheet: {Sheet}").AppendLine($"situation: {Situation}").AppendLine("standing: own").AppendLine("Given");
            foreach (var given in Given) text.AppendLine($"  {given}");
            return text.AppendLine("Expect").AppendLine($"  {Decision} is {Answer} by {Rule}").ToString();
        }
    }
}
