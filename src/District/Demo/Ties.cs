using Umpirage.District.Calendar;
using Umpirage.District.People;

namespace Umpirage.District.Demo;

/// <summary>What crews have to mind in the demonstration: guardians' approvals, children who play, requests, homes, visits, coordinators of youth games, games elsewhere. Has dice of its own, so that the rest stays as it was.</summary>
internal static class Ties
{
    public static IEnumerable<object> Of(Plan plan, Folk folk, IReadOnlyList<Team> teams, IReadOnlyList<ScheduledGame> games, DateTime now, Dice dice)
    {
        var minors = folk.People.Where(p => p.IsMinor).Select(p => p.Key).ToHashSet();
        var adults = folk.Officials.Where(o => !minors.Contains(o.Person)).Select(o => o.Person).ToList();
        var leagues = folk.People.ToDictionary(p => p.Key, p => p.League);
        foreach (var guardianship in folk.Guardianships) yield return new Approval(guardianship.Child, guardianship.Guardian, new(2026, 3, 1), new(2026, 10, 31));
        foreach (var adult in dice.Shuffled(adults).Take(20).Order(StringComparer.Ordinal))
            yield return new Interest(adult, InterestOf.Team, dice.Of([.. teams.Where(t => t.League == leagues[adult])]).Key, "child plays there");
        foreach (var pair in dice.Shuffled(adults).Take(8).Chunk(2)) yield return new Pairing(pair[0], pair[1], PairingKind.Apart, new(2026, 3, 1), new(2026, 10, 31));
        foreach (var adult in adults)
        {
            var park = plan.Parks.First(p => p.Key == leagues[adult]);
            yield return new HomePlace(adult, Math.Round(park.Latitude + (dice.Below(9) - 4) / 100.0, HomePlace.Places), Math.Round(park.Longitude + (dice.Below(9) - 4) / 100.0, HomePlace.Places));
        }
        var trainers = folk.Roles.Where(r => r.Role == Role.Trainer).Select(r => r.Person).ToList();
        foreach (var official in dice.Shuffled(folk.Officials).Take(40).OrderBy(o => o.Person, StringComparer.Ordinal))
        {
            var by = dice.Of([.. trainers.Where(t => t != official.Person)]);
            yield return new Visit(official.Person, official.Grade >= Grade.Plate && dice.In(2) ? Position.Plate : Position.Base, DateOnly.FromDateTime(now).AddDays(-1 - dice.Below(35)), by);
        }
        foreach (var adult in dice.Shuffled(adults).Take(4).Order(StringComparer.Ordinal)) yield return new ElsewhereGame(adult, now.Date.AddDays(7).AddHours(9), now.Date.AddDays(7).AddHours(11), "base");
        foreach (var adult in dice.Shuffled(adults).Take(12).Order(StringComparer.Ordinal))
        {
            // after the open week, whose holes are planned
            var first = DateOnly.FromDateTime(now).AddDays(14 + dice.Below(30));
            yield return new Away(adult, first, first.AddDays(dice.Below(10)));
        }
        foreach (var coordination in Coordinators(plan, folk, games)) yield return coordination;
        foreach (var game in games.Where(g => g.Status == GameStatus.Played && g.Start > now.AddDays(-7))) yield return new GameOver(game.Key, game.Start.AddMinutes(95 + dice.Below(8) * 5));
    }

    /// <summary>In turn, nobody at two games at once; where all are at a game already, nobody is named and no minor may be given it.</summary>
    private static IEnumerable<Coordination> Coordinators(Plan plan, Folk folk, IReadOnlyList<ScheduledGame> games)
    {
        // games with a youth base first; where somebody is still free, those in which the older minors may have the bases
        var youth = plan.Divisions.Where(d => d.Division.Crew > 0).Select((d, i) => (d.Division.Key, Turn: d.Division.YouthBase ? 0 : 1, d.Division.Code)).Where(d => d.Turn == 0 || plan.Divisions.Any(y => y.Division.YouthBase && Next(plan, y.Division, d.Code))).ToDictionary(d => d.Key, d => d.Turn);
        var coordinators = folk.Roles.Where(r => r.Role == Role.Coordinator).Select(r => r.Person).ToList();
        var until = coordinators.ToDictionary(c => c, _ => DateTime.MinValue);
        foreach (var game in games.Where(g => youth.ContainsKey(g.Division)).OrderBy(g => g.Start).ThenBy(g => youth[g.Division]).ThenBy(g => g.Key, StringComparer.Ordinal))
        {
            if (coordinators.Where(c => until[c] <= game.Start).MinBy(c => until[c]) is not { } free) continue;
            until[free] = game.Start.AddMinutes(HoursOfAGame * 60);
            yield return new(game.Key, free);
        }
    }

    /// <summary>Whether a code is that of the next division of the same game after one with a youth base.</summary>
    private static bool Next(Plan plan, Division youth, string code)
    {
        List<string> codes = [.. plan.Divisions.Select(d => d.Division).Where(d => d.Code.Split('/')[0] == youth.Code.Split('/')[0]).Select(d => d.Code).Distinct()];
        return codes.IndexOf(code) == codes.IndexOf(youth.Code) + 1;
    }

    private const int HoursOfAGame = 2;
}
