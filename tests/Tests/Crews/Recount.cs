using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Tests.Crews;

/// <summary>
/// Counts once more what crews have to keep, plainly and from the records alone, with the numbers typed in (common practice, no source: three games
/// and two plates a day, one plate from 103 F, two games under 16, 45 minutes, three years, half past nine and half past ten, 40 km an hour and 10
/// minutes, 5 minutes in a park, games of 120 minutes). Shares nothing with the check but the records.
/// </summary>
internal sealed class Recount(CrewRecords records)
{
    private sealed record Block(DateTime Start, DateTime End, bool Plate, Assignment? Seat);

    public List<(string Constraint, string Game, string Place, string Person)> All()
    {
        var found = new List<(string, string, string, string)>();
        foreach (var seat in records.Assignments.Where(a => a.Person is not null && Game(a.Game).IsAhead))
            foreach (var constraint in Broken(seat).Distinct()) found.Add((constraint, seat.Game, seat.Place, seat.Person!));
        return found;
    }

    private ScheduledGame Game(string key) => records.Games.Single(g => g.Key == key);
    private Person Person(string key) => records.People.Single(p => p.Key == key);
    private DateTime End(ScheduledGame g) => records.Endings.FirstOrDefault(e => e.Game == g.Key)?.At ?? g.Start.AddHours(2);
    private Park Park(ScheduledGame g) => records.Parks.Single(p => p.Key == records.Diamonds.Single(d => d.Key == g.Diamond).Park);
    private static int Rank(Division d) => d.Code.Contains("10U") ? 10 : d.Code.Contains("12U") ? 12 : d.Code.Contains("14U") ? 14 : 18;

    private IEnumerable<string> Broken(Assignment seat)
    {
        var game = Game(seat.Game);
        var (who, day, end) = (Person(seat.Person!), DateOnly.FromDateTime(game.Start), End(game));
        var division = records.Divisions.Single(d => d.Key == game.Division);
        var crew = records.Assignments.Where(a => a.Game == game.Key && a.Person is not null).ToList();
        var (home, visitor) = (records.Teams.Single(t => t.Key == game.Home), records.Teams.Single(t => t.Key == game.Visitor));
        var coordinator = records.Coordinations.FirstOrDefault(c => c.Game == game.Key)?.Person;
        var minor = who.Band is AgeBand.Under13 or AgeBand.From13To15 or AgeBand.From16To17;

        var clearances = records.Clearances.Where(c => c.Person == who.Key).ToList();
        foreach (var kind in clearances.Select(c => c.Requirement).Distinct()) if (!clearances.Any(c => c.Requirement == kind && c.From <= day && c.Until >= day)) yield return "clearance";
        if (!clearances.Any(c => c.Requirement == "abuse-awareness course") || (!minor && !clearances.Any(c => c.Requirement == "background check"))) yield return "clearance";

        if (minor)
        {
            var guardians = records.Guardianships.Where(g => g.Child == who.Key).Select(g => g.Guardian).ToList();
            if (!records.Approvals.Any(a => a.Child == who.Key && guardians.Contains(a.Guardian) && a.From <= day && a.Until >= day)) yield return "guardian's approval";
            var youngest = who.Band == AgeBand.From13To15 ? 13 : 16;
            if (who.Band == AgeBand.Under13 || youngest - Rank(division) < 3) yield return "age gap";
            var adults = crew.Where(a => !Person(a.Person!).IsMinor).Select(a => a.Person!).Distinct().ToList();
            if (coordinator is null) yield return "adult coordinator";
            else
            {
                if (Person(coordinator).IsMinor) yield return "adult coordinator";
                if (records.Roles.Any(r => r.Person == coordinator && r.Role == Role.Manager && (r.Team == game.Home || r.Team == game.Visitor))) yield return "adult coordinator";
                if (records.Coordinations.Any(c => c.Person == coordinator && c.Game != game.Key && Game(c.Game).IsAhead && Meet(Game(c.Game), game))) yield return "adult coordinator";
                if (records.Assignments.Any(a => a.Person == coordinator && a.Game != game.Key && Game(a.Game).IsAhead && Meet(Game(a.Game), game))) yield return "adult coordinator";
            }
            if (adults.Count == 1 && (coordinator is null || coordinator == adults[0])) yield return "never with one adult alone";
            if (adults.Count > 1 && coordinator is not null && adults.Contains(coordinator)) yield return "never with one adult alone";
            var last = who.Band == AgeBand.From16To17 ? 22.5 : 21.5;
            if ((end - game.Start.Date).TotalHours > last) yield return "youth curfew";
        }

        var blocks = records.Assignments.Where(a => a.Person == who.Key && Game(a.Game).IsAhead && Game(a.Game).Start.Date == game.Start.Date && a != seat)
            .Where(a => Game(a.Game) is var g && (g.Start < game.Start || (g.Start == game.Start && (string.CompareOrdinal(g.Key, game.Key) < 0))))
            .Select(a => new Block(Game(a.Game).Start, End(Game(a.Game)), a.Place == "plate", a)).ToList();
        blocks.AddRange(records.Elsewhere.Where(e => e.Person == who.Key && e.Start.Date == game.Start.Date).Select(e => new Block(e.Start, e.Until, e.Place == "plate", null)));
        if (blocks.Count >= (who.Band is AgeBand.Under13 or AgeBand.From13To15 ? 2 : 3)) yield return "games a day";
        var plates = records.Heat.TryGetValue(day, out var f) && f >= 103 ? 1 : 2;
        if (seat.Place == "plate" && blocks.Count(b => b.Plate) >= plates) yield return "plates a day";
        if (blocks.Any(b => b.Start < end && b.End > game.Start)) yield return "one game at a time";
        if (records.Coordinations.Any(c => c.Person == who.Key && c.Game != game.Key && Game(c.Game).IsAhead && Meet(Game(c.Game), game) && Game(c.Game).Start.Date is var _)) yield return "one game at a time";
        foreach (var b in blocks)
        {
            var between = b.End <= game.Start ? (game.Start - b.End).TotalMinutes : b.Start >= end ? (b.Start - end).TotalMinutes : 999;
            if (between < 45) yield return "break between games";
        }
        if (blocks.Where(b => b.Seat is not null).OrderBy(b => b.Start).ThenBy(b => b.Seat!.Game, StringComparer.Ordinal).LastOrDefault() is { } before)
        {
            var from = Game(before.Seat!.Game);
            var left = (game.Start - before.End).TotalMinutes;
            if (left >= 0 && left < Way(from, game)) yield return "travel";
        }

        var certificates = records.Certificates.Where(c => c.Person == who.Key && division.Code.StartsWith(c.Game) && c.From <= day && c.Until >= day);
        if (!certificates.Any(c => Rank(records.Divisions.Single(d => d.Key == c.Division)) >= Rank(division) && (seat.Place != "plate" || c.Position == Position.Plate))) yield return "certificate";
        var official = records.Officials.FirstOrDefault(o => o.Person == who.Key);
        if (official is null || (seat.Place == "plate" && official.Grade is Grade.Trainee or Grade.Base)) if (official is null || seat.Place == "plate") yield return "grade";
        // minute by minute: each begins and ends in hours that were given
        var hours = records.Hours.Where(h => h.Person == who.Key && h.Day == game.Start.DayOfWeek).Select(h => (From: game.Start.Date.Add(h.From.ToTimeSpan()), Until: game.Start.Date.Add(h.Until.ToTimeSpan()))).ToList();
        if (records.Aways.Any(a => a.Person == who.Key && a.From <= day && a.Until >= day) || Enumerable.Range(0, (int)(end - game.Start).TotalMinutes).Select(m => game.Start.AddMinutes(m)).Any(at => !hours.Any(h => h.From <= at && h.Until >= at.AddMinutes(1)))) yield return "availability";
        if (records.Interests.Any(i => i.Person == who.Key && (i.Of == game.Home || i.Of == game.Visitor || i.Of == home.League || i.Of == visitor.League))) yield return "interest";
        if (records.Roles.Any(r => r.Person == who.Key && r.Role == Role.Manager && (r.Team == game.Home || r.Team == game.Visitor))) yield return "interest";
        var pairs = records.Pairings.Where(p => p.From <= day && p.Until >= day).ToList();
        if (crew.Any(a => a.Person != who.Key && pairs.Any(p => p.Kind == PairingKind.Apart && ((p.Person == who.Key && p.Other == a.Person) || (p.Other == who.Key && p.Person == a.Person))))) yield return "kept apart";
        var mentors = pairs.Where(p => p.Kind == PairingKind.Mentor && p.Person == who.Key).Select(p => p.Other).ToList();
        if (mentors.Count > 0 && !crew.Any(a => mentors.Contains(a.Person!))) yield return "mentor";
        string[] places = division.Crew == 1 ? ["plate", "youth base"] : ["plate", "base"];
        if (!places.Contains(seat.Place) || (seat.Place == "youth base" && !minor)) yield return "place";
        if (home.League != visitor.League && (who.League == home.League || who.League == visitor.League)) yield return "neutrality";
        var all = blocks.Where(b => b.Start < game.Start || (b.Start == game.Start && b.Seat is not null)).OrderBy(b => b.Start).ThenBy(b => b.Seat?.Game, StringComparer.Ordinal).ToList();
        if (seat.Place == "plate" && all.Count > 0 && all[^1].Plate) yield return "plate rotation";
        if (official is not null)
        {
            var monday = day.AddDays(-(((int)day.DayOfWeek + 6) % 7));
            var earlier = records.Assignments.Count(a => a.Person == who.Key && Game(a.Game) is var g && g.IsAhead && DateOnly.FromDateTime(g.Start) >= monday && DateOnly.FromDateTime(g.Start) < monday.AddDays(7)
                && (g.Start < game.Start || (g.Start == game.Start && string.CompareOrdinal(g.Key, game.Key) < 0)));
            if (earlier + 1 > official.GamesAWeek) yield return "games offered";
        }
    }

    private bool Meet(ScheduledGame a, ScheduledGame b) => a.Start < End(b) && b.Start < End(a);

    /// <summary>Whole minutes upwards, by the spherical law of cosines.</summary>
    private double Way(ScheduledGame from, ScheduledGame to)
    {
        if (from.Key == to.Key) return -1;
        if (from.Diamond == to.Diamond) return 0;
        var (a, b) = (Park(from), Park(to));
        if (a.Key == b.Key) return 5;
        double Rad(double d) => d / 180 * Math.PI;
        var cos = Math.Sin(Rad(a.Latitude)) * Math.Sin(Rad(b.Latitude)) + Math.Cos(Rad(a.Latitude)) * Math.Cos(Rad(b.Latitude)) * Math.Cos(Rad(a.Longitude - b.Longitude));
        return Math.Ceiling(Math.Acos(Math.Min(1, cos)) * 6371.0088 / 40 * 60) + 10;
    }
}
