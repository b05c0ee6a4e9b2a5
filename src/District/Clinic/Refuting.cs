using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Clinic;

/// <summary>Holds beliefs against a code: each is ruled by the engine, and taught only where the ruling proves it wrong.</summary>
public static class Refuting
{
    /// <summary>The beliefs that the code contradicts. One that turns out true, or that leaves the ruling open, is left out and told in <paramref name="findings"/>.</summary>
    public static IReadOnlyList<Refuted> Of(Codebook book, PhraseBook phrases, IReadOnlyList<Misbelief> beliefs, Code code, List<Finding> findings)
    {
        var refuted = new List<Refuted>();
        foreach (var belief in beliefs.Where(b => b.Games.Contains(code.Game, StringComparer.OrdinalIgnoreCase)))
        {
            void Fault(string message) => findings.Add(new(FindingKind.ImpossiblePlay, "misbeliefs", belief.Line, $"'{belief.Said}' under {code.Address}: {message}"));
            var before = findings.Count;
            if (Bank.Table(book, book.Sheet(belief.Sheet)!, code, findings) is not { } table) continue;
            var ruling = Umpire.Rule(table, Situation.Read(table.Sheet, "misbeliefs", belief.Given.Select(g => new Phrase(g, belief.Line)), findings));
            if (findings.Count > before) continue;
            if (!ruling.IsPossible) { Fault($"this cannot be: {string.Join("; ", ruling.Impossible)}"); continue; }
            if (ruling.Find(belief.Decision) is not { } decided) { Fault($"nothing decides '{belief.Decision}'"); continue; }
            if (decided.Values.Count > 1) { Fault($"'{belief.Decision}' is open: {Words.Or(decided.Values)}; say more in 'given'"); continue; }
            if (Words.Same(decided.Values[0], belief.Expected)) { Fault($"it is so: {belief.Decision} is {belief.Expected}"); continue; }
            refuted.Add(Told(table, phrases, belief, decided.Values[0], ruling));
        }
        return refuted;
    }

    private static Refuted Told(Table table, PhraseBook phrases, Misbelief belief, string ruled, Ruling ruling)
    {
        var (teller, decided) = (new Teller(table.Sheet, phrases), ruling.Find(belief.Decision)!);
        return new(belief, table.Sheet.Bound.Sheet.Group, string.Join(' ', belief.Given.Select(teller.Said)), ruled, RuledBy.Of(table.Sheet, decided.By[0], decided.Term.Index));
    }
}
