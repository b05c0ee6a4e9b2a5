using Umpirage.District.Pitchers;

namespace Umpirage.Tests.Pitchers;

/// <summary>Codes and ledgers for the tests of this room.</summary>
internal static class Arms
{
    public static readonly DateOnly Saturday = new(2026, 5, 16);

    private static readonly Dictionary<(string, DateOnly), PitchingCode> Codes = [];

    public static PitchingCode Code(string address, DateOnly? day = null)
    {
        lock (Codes)
        {
            if (Codes.TryGetValue((address, day ?? Saturday), out var known)) return known;
            var findings = new List<Finding>();
            var code = PitchingCode.Of(Shelf.Codes, address, day ?? Saturday, findings);
            Assert.Empty(findings);
            return Codes[(address, day ?? Saturday)] = code!;
        }
    }

    public static Appearance Line(DateOnly day, int pitches = 0, int before = -1, int innings = 0, int caught = 0, int outs = 0, string game = "", string counter = "home book", int entry = 1) =>
        new(game == "" ? $"G-{day:MMdd}" : game, "7", "OWL", counter, day, entry, pitches, before < 0 ? Math.Max(0, pitches - 1) : before, innings, caught, outs);

    public static Ledger Ledger(string sport, string division, params Appearance[] lines) =>
        Umpirage.District.Pitchers.Ledger.Of("7", lines, key => new PitchedGame(key, sport, division, 9 * 60));

    public static Eligibility Ask(string address, DateOnly day, params Appearance[] lines)
    {
        var code = Code(address);
        return Eligible.Of(Ledger(code.Code.Game, code.Code.Division, lines), code, code, new(day, new("next", code.Code.Game, code.Code.Division, 14 * 60)));
    }
}
