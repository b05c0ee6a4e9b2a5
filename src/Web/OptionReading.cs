using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Web;

/// <summary>A value of a code without and with a layer.</summary>
public sealed record OptionChange(string Sheet, string Name, string Before, string After);

/// <summary>A proposed layer, read and held against the whole rule code: what it leaves open, what it contradicts, what it changes.</summary>
public sealed class OptionReading
{
    private readonly Codebook book;

    private OptionReading(Layer layer, Codebook book, IReadOnlyList<Finding> findings) => (Layer, this.book, Findings) = (layer, book, findings);

    public Layer Layer { get; }
    public IReadOnlyList<Finding> Findings { get; }

    public static OptionReading Of(Shelf shelf, string text)
    {
        const string file = "proposal.layer";
        var book = shelf.With([new(file, text)]);
        var layer = LayerReader.Read(file, text, book.Roster, []);
        return new(layer, book, Checker.Check(book, layer));
    }

    /// <summary>What a division's code says otherwise when the layer is laid on it.</summary>
    public IEnumerable<OptionChange> Changes(string address, DateOnly day)
    {
        if (CodeAddress.Read(address) is not { } read || Layer.Name == "" || Layer.Deferrals.Count > 0) yield break;
        // a district's own layer is in the address already; a league's goes on top where it stands on what is there
        var over = read.Layers.Any(l => Words.Same(l.Name, Layer.Name)) ? read : Layer.On is { } on && read.Layers.Any(l => Words.Same(l.Name, on)) ? read with { Layers = [.. read.Layers, new(Layer.Name, [])] } : null;
        if (over is null) yield break;
        var below = over with { Layers = [.. over.Layers.Where(l => !Words.Same(l.Name, Layer.Name))] };
        if (below.Layers.Count == 0 && Layer.On is { } book_) below = below with { Layers = [new(book_, [])] };
        if (Casebook.Code(book, below.ToString(), day, _ => { }) is not { } without || Casebook.Code(book, over.ToString(), day, _ => { }) is not { } with) yield break;
        foreach (var change in Layer.Changes)
            if (book.Sheet(change.Sheet)?.Parameters.FirstOrDefault(p => Words.Same(p.Name, change.Parameter)) is { } parameter
                && (without.Value(parameter)?.Value ?? "nothing", with.Value(parameter)?.Value ?? "nothing") is var (before, after) && before != after)
                yield return new(change.Sheet, change.Parameter, before, after);
    }
}
