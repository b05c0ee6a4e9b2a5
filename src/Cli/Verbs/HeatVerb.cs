using Umpirage.District.Clock;
using Umpirage.Rules.Ground;

namespace Umpirage.Cli.Verbs;

/// <summary>The heat index, or the globe temperature from three readings, and what a code asks for at that number.</summary>
internal static class HeatVerb
{
    private const string How = "write a temperature and a humidity: ./umpirage heat 94 50 \"BB 11-12\"; or wet bulb, globe and air: ./umpirage heat --globe 78 110 94";

    public static int Run(Request request)
    {
        var words = request.Words.ToList();
        var globe = words.Remove("--globe");
        var count = globe ? 3 : 2;
        if (words.Count < count || words.Count > count + 1) { Console.Error.WriteLine(How); return Verb.Unusable; }
        var faults = new List<string>();
        var index = globe ? null : HeatIndex.Read(words[0], words[1], faults);
        var reading = globe ? GlobeTemperature.Read(words[0], words[1], words[2], faults) : null;
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (faults.Count > 0) return Verb.Unusable;
        var named = words.ElementAtOrDefault(count);
        var book = Library.Codes(request, [globe ? "heat by globe" : "heat"], named);
        var findings = new List<Finding>(book.Findings);
        var address = named ?? book.Roster.UsualCode(null);
        var answer = index is not null ? HeatWatch.Rule(book, address, index, request.Today, findings) : HeatWatch.Rule(book, address, reading!, request.Today, findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        if (answer is null || findings.Count > 0) return Verb.Unusable;
        if (request.Json) Json.Write(answer);
        else Console.Write(ClockText.Of(answer));
        return Verb.Fine;
    }
}
