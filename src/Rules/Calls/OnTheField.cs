using Umpirage.Rules.Codes;
using Umpirage.Rules.Games;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;
using Umpirage.Rules.Records;

namespace Umpirage.Rules.Calls;

/// <summary>Rules a written play and carries the ruling out on the game it was written in.</summary>
public static class OnTheField
{
    /// <summary>Before the player whom the play is about.</summary>
    private const string About = "about ";

    /// <summary>The ways the play can end, side by side; empty when it cannot be read. A play without a game has rulings only.</summary>
    public static IReadOnlyList<Ending> Of(Play play, Ruling ruling, List<Finding> findings)
    {
        if (play.Before.Count == 0) return Choices.Of(ruling, null, WrittenPlay.None, Place.Plate);
        var wrong = findings.Count;
        var about = play.Before.ToLookup(p => p.Text.StartsWith(About, StringComparison.Ordinal));
        var before = Scene.Read(play.File, about[false].Select(p => (p.Text, p.Line)), findings);
        var subject = about[true].FirstOrDefault() is { } said ? before.PlaceOf(said.Text[About.Length..].Trim()) ?? Place.Plate : Place.Plate;
        var written = WrittenPlay.None;
        if (play.PlayLines.Count > 0)
        {
            var text = $"{(before.Batting == Side.Visitors ? "Top" : "Bottom")} {before.Inning}\n{string.Join('\n', play.PlayLines.Select(p => p.Text))}";
            var events = GameFile.Read(play.File, text, findings).Events;
            written = new([.. events.OfType<Pitched>()], events.OfType<Played>().FirstOrDefault());
        }
        return findings.Count > wrong ? [] : Choices.Of(ruling, before, written, subject);
    }
}
