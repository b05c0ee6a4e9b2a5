using System.Globalization;
using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;
using Umpirage.Rules.Ground;
using Umpirage.Solve.Crews;
using Umpirage.Store;

namespace Umpirage.Cli.Verbs;

/// <summary>Crews: a week's plan, the reasons for no, substitutes, supply against demand, and what people were told.</summary>
internal static class CrewsVerb
{
    private const string Usage = """
        write: ./umpirage crews solve --week DATE [--seconds N] [--save]
               ./umpirage crews check --week DATE
               ./umpirage crews why PERSON GAME [PLACE] [--heat F]
               ./umpirage crews subs GAME [PLACE] [--at HH:MM] [--away PERSON=MINUTES,...] [--heat F]
               ./umpirage crews forecast --week DATE
               ./umpirage crews diff --week DATE
               ./umpirage crews publish --week DATE
               ./umpirage crews freeze GAME
               ./umpirage crews thaw GAME
        """;

    private static readonly string[] Deeds = ["solve", "check", "why", "subs", "forecast", "diff", "publish", "freeze", "thaw"];

    public static int Run(Request request)
    {
        var faults = new List<string>();
        var asked = CrewsAsked.Read(request, faults);
        if (!Deeds.Contains(asked.Deed)) faults.Insert(0, asked.Deed == "" ? "crews of what?" : $"there is no 'crews {asked.Deed}'; {Words.Offer(asked.Deed, Deeds)}");
        if (faults.Count > 0)
        {
            foreach (var fault in faults) Console.Error.WriteLine(fault);
            Console.Error.WriteLine(Usage);
            return Verb.Unusable;
        }
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        CrewRecords Records() => CrewReader.Read(store, asked.Heat is { } heat && store.Games.Find(asked.Game) is { } hot ? new Dictionary<DateOnly, double> { [hot.Day] = heat } : null);
        CrewPlan Plan() => CrewPlan.Of(Records(), UmpiresCodes.For(store.Codes!()));
        return asked.Deed switch
        {
            "solve" => Solve(request, asked, store, Plan()), "check" => Check(request, asked, store, Plan()), "forecast" => Foresee(request, asked, store, Plan()),
            "diff" => CrewsPublished.Diff(request, store, Records(), Monday(asked, store)), "publish" => CrewsPublished.Publish(request, store, Monday(asked, store)),
            "freeze" or "thaw" => CrewsPublished.Freeze(request, store, asked.Game, asked.Deed == "freeze"),
            _ => OneGame(request, asked, Plan()),
        };
    }

    private static DateOnly Monday(CrewsAsked asked, DistrictStore store) => AsOffered.Monday(asked.Week ?? store.Today);

    private static int Solve(Request request, CrewsAsked asked, DistrictStore store, CrewPlan plan)
    {
        var now = DistrictOf.Now(request, store);
        var task = CrewTask.Week(plan, Monday(asked, store), now) with { Seconds = asked.Seconds ?? 15 };
        if (task.Games.Count == 0) { Console.Error.WriteLine($"no umpired games lie ahead in the week of {CodeAddress.Day(Monday(asked, store))}"); return Verb.No; }
        using var stop = new CancellationTokenSource();
        Console.CancelKeyPress += (_, pressed) => { pressed.Cancel = true; stop.Cancel(); };
        var result = CrewSearch.Find(task, stop.Token);
        if (asked.Save && CrewKeeping.Keep(store, plan, result.Plan, task.Games) is { Count: > 0 } faults)
        {
            foreach (var fault in faults) Console.Error.WriteLine(fault);
            return Verb.No;
        }
        if (request.Json) Json.Write(CrewsJson.Of(result, task, asked.Save));
        else foreach (var line in CrewsText.Of(result, task, Forecast.Of(plan, Monday(asked, store)), asked.Save)) Console.WriteLine(line);
        return result.Required.Any() ? Verb.No : Verb.Fine;
    }

    private static int Check(Request request, CrewsAsked asked, DistrictStore store, CrewPlan plan)
    {
        var monday = Monday(asked, store);
        var breaches = CrewCheck.All(plan, plan.Games.Where(g => g.Game.IsAhead && g.Day >= monday && g.Day < monday.AddDays(7)).Select(g => g.Key).ToHashSet());
        if (request.Json) Json.Write(breaches.Select(CrewsJson.Of));
        else
        {
            foreach (var game in breaches.GroupBy(b => b.Game))
            {
                Console.WriteLine($"{game.Key}: {CrewWords.Game(plan.Game(game.Key)!)}");
                foreach (var b in game) Console.WriteLine($"  {b.Place}, {plan.Person(b.Person)!.Name}: {CrewWords.Breach(b)}");
            }
            Console.WriteLine($"{breaches.Count(b => b.Hold == Hold.Safety)} against safety, {breaches.Count(b => b.Hold == Hold.Rule)} against rules, {breaches.Count(b => b.Hold == Hold.Wish)} wishes not met");
        }
        return breaches.Any(b => b.Hold != Hold.Wish) ? Verb.No : Verb.Fine;
    }

    private static int Foresee(Request request, CrewsAsked asked, DistrictStore store, CrewPlan plan)
    {
        var forecast = Forecast.Of(plan, Monday(asked, store));
        if (request.Json) Json.Write(CrewsJson.Of(forecast));
        else foreach (var line in CrewWords.Forecast(forecast)) Console.WriteLine(line);
        return forecast.Short > 0 ? Verb.No : Verb.Fine;
    }

    private static int OneGame(Request request, CrewsAsked asked, CrewPlan plan)
    {
        if (plan.Game(asked.Game) is not { Game.IsAhead: true } game)
        {
            var gone = plan.Records.Games.FirstOrDefault(g => g.Key == asked.Game);
            Console.Error.WriteLine(gone is null ? $"there is no game '{asked.Game}'; {Words.Offer(asked.Game, [.. plan.Games.Select(g => g.Key)])}" : $"the game '{asked.Game}' is not to be played: {gone.Status.ToString().ToLowerInvariant()}");
            return Verb.Unusable;
        }
        if (asked.Place is { } place && !CrewPlace.All.Contains(place)) { Console.Error.WriteLine($"there is no place '{place}'; it may be {Words.Or(CrewPlace.All)}"); return Verb.Unusable; }
        if (!request.Json) Console.WriteLine(CrewWords.Game(game));
        if (asked.Deed == "subs") return Substitutes(request, asked, plan, game);
        if (plan.Person(asked.Person) is not { } person) { Console.Error.WriteLine($"there is no person '{asked.Person}'; {Words.Offer(asked.Person, [.. plan.Officials.Select(p => p.Key)])}"); return Verb.Unusable; }
        IReadOnlyList<WhyNot> answers = asked.Place is { } one ? [WhyNot.Of(plan, person, game, one)] : WhyNot.Of(plan, person, game);
        if (request.Json) Json.Write(answers.Select(CrewsJson.Of));
        else foreach (var line in answers.SelectMany(CrewWords.Why)) Console.WriteLine(line);
        return answers.Any(a => a.May) ? Verb.Fine : Verb.No;
    }

    private static int Substitutes(Request request, CrewsAsked asked, CrewPlan plan, CrewGame game)
    {
        var calling = new Calling(asked.At is { } at ? game.Start.Date.Add(at.ToTimeSpan()) : null, asked.Away, asked.Away?.Keys.ToHashSet());
        if (asked.Place is null && asked.At is not null)
        {
            var call = CallUp.Of(plan, game, calling);
            if (request.Json) Json.Write(CrewsJson.Of(call));
            else foreach (var line in CrewWords.Call(call)) Console.WriteLine(line);
            return call.StillOpen.Count > 0 ? Verb.No : Verb.Fine;
        }
        var found = false;
        foreach (var place in asked.Place is { } one ? [one] : plan.Open(game))
        {
            var subs = Subs.For(plan, game, place, calling);
            found |= subs.Any(s => s.Standing == Standby.Legal);
            if (request.Json) { Json.Write(new { place, subs = subs.Select(CrewsJson.Of) }); continue; }
            Console.WriteLine($"{place}:");
            foreach (var sub in subs.Where(s => s.Standing != Standby.No).Take(10)) Console.WriteLine($"  {CrewWords.Sub(sub)}");
            var no = subs.Where(s => s.Standing == Standby.No).ToList();
            Console.WriteLine($"  {no.Count} more may not: {string.Join(", ", no.GroupBy(s => s.Reasons[0].Constraint).OrderByDescending(g => g.Count()).Select(g => $"{g.Count()} {g.Key}"))}");
        }
        if (asked.Place is null && plan.Open(game).Count == 0) Console.WriteLine("every place is filled; name the place that falls open");
        return found ? Verb.Fine : Verb.No;
    }
}
