using Umpirage.District.People;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Options;

/// <summary>Says under which code a game is played: the division's code, with the home league's options; between two leagues, with their agreement where there is one.</summary>
public static class Governing
{
    /// <returns>The address of the code, without a day.</returns>
    public static string Code(Codebook book, Division division, League home, League visitor)
    {
        var on = division.Code.LastIndexOf('+') is >= 0 and var plus ? division.Code[(plus + 1)..] : "";
        var own = Layer(home);
        if (home.Key == visitor.Key) return own is null ? division.Code : With(own.Name);
        var agreement = book.Layers.FirstOrDefault(l => l.Kind == LayerKind.Game && l.On is { } stands && Words.Same(stands, on));
        // an agreement speaks of leagues that have options of their own; one without any plays the district's
        string[] parties = [.. new[] { own, Layer(visitor) }.OfType<Layer>().Select(l => l.Name)];
        return agreement is null || own is null ? division.Code : With($"{agreement.Name}({string.Join(',', parties)})");

        Layer? Layer(League league) => on == "" ? null : book.Layers.FirstOrDefault(l => l.Kind == LayerKind.League && l.On is { } stands && Words.Same(stands, on) && Words.Same(l.Name, league.Key));
        string With(string layer) => $"{division.Code[..^(on.Length + 1)]}+{layer}";
    }
}
