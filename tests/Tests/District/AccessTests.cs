using Umpirage.District.People;

namespace Umpirage.Tests.District;

/// <summary>The table of who may do what against one written by hand from the description of the roles: access.txt.</summary>
public class AccessTests
{
    private sealed record Line(string Role, string Deed, string Reach, string Why);

    private static List<Line> Read()
    {
        var lines = File.ReadLines(Folder.Of("tests", "Tests", "District", "access.txt")).Where(l => l != "" && !l.StartsWith('#'))
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries)).ToList();
        Assert.All(lines, l => Assert.True(l.Length == 4 && l[3] != "", string.Join("|", l)));
        return [.. lines.Select(l => new Line(l[0], l[1], l[2], l[3]))];
    }

    [Fact]
    public void Every_role_may_do_what_is_written_and_reaches_as_far()
    {
        var written = Read().Where(l => l.Role is not ("nobody" or "anybody")).ToDictionary(l => (l.Role, l.Deed), l => l.Reach);
        var wrong = new List<string>();
        foreach (var role in Enum.GetValues<Role>())
            foreach (var deed in Enum.GetValues<Deed>())
                if (!written.Remove(($"{role}", $"{deed}"), out var reach)) wrong.Add($"{role} | {deed} is not in access.txt");
                else if (!string.Equals($"{Access.Of(role, deed)}", reach, StringComparison.OrdinalIgnoreCase)) wrong.Add(
                    $"{role} | {deed} is {Access.Of(role, deed)}, written is {reach}");
        wrong.AddRange(written.Keys.Select(k => $"{k.Role} | {k.Deed} is no role or deed"));
        Assert.Empty(wrong);
    }

    [Fact]
    public void What_is_open_to_all_and_to_those_signed_in_is_what_is_written()
    {
        Assert.Equal(Read().Where(l => l.Role == "nobody").Select(l => l.Deed).Order(), Access.Open.Select(d => $"{d}").Order());
        Assert.Equal(Read().Where(l => l.Role == "anybody").Select(l => l.Deed).Order(), Access.SignedIn.Select(d => $"{d}").Order());
    }

    private static Person Of(string key, AgeBand band) => Person.Of(key, key, "", band, band.IsMinor() ? new(2029, 3, 1) : null, null, null, null, [])!;
    private static Viewer With(string key, params RoleHeld[] roles) => new(Of(key, AgeBand.Adult), roles, []);

    [Fact]
    public void A_viewer_reaches_own_league_team_and_children_and_no_further()
    {
        var president = With("pia", new RoleHeld("pia", Role.President, "tarnholt", ""));
        Assert.True(president.May(Deed.ChangeGames, league: "tarnholt"));
        Assert.False(president.May(Deed.ChangeGames, league: "wrenfall"));
        Assert.False(president.May(Deed.ChangeGames, league: null));
        Assert.Equal(["tarnholt"], president.Leagues(Deed.ChangeGames)!);
        Assert.Empty(president.Leagues(Deed.SeeClearances)!);

        var manager = With("max", new RoleHeld("max", Role.Manager, "", "TAR-1"));
        Assert.True(manager.May(Deed.SeePitching, team: "TAR-1"));
        Assert.False(manager.May(Deed.SeePitching, team: "TAR-2"));
        Assert.False(manager.May(Deed.SeePitching, league: "tarnholt"));

        var guardian = new Viewer(Of("gil", AgeBand.Adult), [new("gil", Role.Guardian, "", "")], ["finn"]);
        Assert.True(guardian.May(Deed.SeeCrews, person: "finn"));
        Assert.True(guardian.May(Deed.SeeOwn, person: "finn"));
        Assert.False(guardian.May(Deed.SeeCrews, person: "gwen"));
        Assert.False(guardian.May(Deed.SeeContact, person: "gwen"));

        var chief = With("ada", new RoleHeld("ada", Role.Chief, "", ""));
        Assert.All(Enum.GetValues<Deed>(), d => Assert.True(chief.May(d, league: "wrenfall")));
        Assert.Null(chief.Leagues(Deed.ChangeGames));
    }

    [Fact]
    public void Somebody_not_signed_in_sees_codes_and_venues_only()
    {
        foreach (var deed in Enum.GetValues<Deed>())
        {
            Assert.Equal(deed is Deed.ReadCodes or Deed.SeeVenues, Viewer.Nobody.May(deed));
            Assert.Equal(deed is Deed.ReadCodes or Deed.SeeVenues, Viewer.Nobody.May(deed, league: "tarnholt", team: "TAR-1", person: "finn"));
        }
    }

    [Fact]
    public void Roles_that_see_minors_contacts_see_none_for_there_is_none_to_see() => Assert.All(Enum.GetValues<Role>().Where(r => r is Role.Umpire or Role.YouthUmpire), r =>
        Assert.Equal(Reach.None, Access.Of(r, Deed.SeeContact)));
}
