namespace Umpirage.Tests.Twin;

/// <summary>Bad input gets findings, never an exception. The full million runs in bench/long.sh, where time is measured too.</summary>
public class FuzzTests
{
    [Fact]
    public void Scrambled_sheets_layers_and_plays_raise_no_exception()
    {
        string[] sheets = [.. Shelf.Files(Folder.Of("codes", "sheets"), "*.sheet").Select(File.ReadAllText)];
        string[] layers = [.. Shelf.Files(Folder.Of("codes", "layers"), "*.layer").Select(File.ReadAllText)];
        string[] plays = [.. Shelf.Files(Folder.Of("casebook"), "*.play").Select(File.ReadAllText)];
        var found = 0;
        for (var seed = 0; seed < 3_000; seed++)
        {
            var random = new Random(seed);
            found += (seed % 4) switch
            {
                3 => PlayReader.Read("fuzz.play", Scramble.Of(random, plays, 65_536), []) is var play ? Casebook.Hold(Shelf.Codes, play, Shelf.Today).Misses.Count : 0,
                2 => Checker.Check(Codebook.Read(("roster.txt", Shelf.RosterText), [("a.sheet", sheets[random.Next(sheets.Length)]), ("b.layer", Scramble.Of(random, layers, 65_536))])).Count,
                _ => Checker.Check(Shelf.Of(Scramble.Of(random, sheets, 65_536))).Count,
            };
        }
        Assert.True(found > 3_000, "scrambling that nearly never spoils anything tries nothing");
    }

    [Fact]
    public void Scrambled_rosters_addresses_and_packs_raise_no_exception()
    {
        for (var seed = 0; seed < 2_000; seed++)
        {
            var random = new Random(seed);
            Roster.Read("roster.txt", Scramble.Of(random, [Shelf.RosterText], 8_000), []);
            var faults = new List<string>();
            Casebook.Code(Shelf.Codes, Scramble.Of(random, ["softball/12U+interleague(Tarnholt,Wrenfall)@2026-05-16", "SB 12U@2026-05-16"], 80), Shelf.Today, faults.Add);
            var bytes = new byte[random.Next(200)];
            random.NextBytes(bytes);
            try { Pack.Read(bytes); } catch (InvalidDataException) { /* the one way a pack may be refused */ }
        }
    }
}
