using Umpirage.Rules.Calls;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

/// <summary>An interactive session: asks only what can still matter, then gives the ruling. "?" or an empty line means not known.</summary>
internal static class AskVerb
{
    public static int Run(Request request)
    {
        if (request.Words.Count == 0) return Subjects(request);
        var name = request.Words[0];
        var book = Library.Codes(request, [name]);
        if (book.Sheet(name) is not { } sheet) { Console.Error.WriteLine($"there is no subject '{name}'; {Words.Offer(name, [.. book.Sheets.Select(s => s.Name)])}"); return Verb.Unusable; }
        var findings = new List<Finding>(book.Findings);
        var address = request.Address(book, sheet);
        if (Casebook.Table(book, address, name, request.Today, "ask", findings) is not { } table)
        {
            foreach (var finding in findings) Console.Error.WriteLine(finding);
            return Verb.Unusable;
        }
        var (situation, given) = Session(table);
        var ruling = Umpire.Rule(table, situation);
        var play = new Play { File = "ask", Sheet = name, Code = table.Sheet.Code.Address.ToString() };
        play.Given.AddRange(given.Select(g => new Phrase(g, 0)));
        var answer = Answer.Of(ruling, Elsewhere.Of(book, play, ruling, request.Today), RuleVerb.Told(OnTheField.Of(play, ruling, findings)));
        if (request.Json) Json.Write(answer); else Console.Write("\n" + answer.Text(""));
        return ruling.IsRuled ? Verb.Fine : Verb.No;
    }

    private static (Situation, List<string>) Session(Table table)
    {
        var situation = Situation.Unknown(table.Sheet);
        var given = new List<string>();
        var declined = new HashSet<int>();
        while (Questions.Next(table, situation, declined) is { } fact)
        {
            var open = situation.Known[fact.Index];
            List<string> values = [.. fact.Values.Where((_, v) => (open >> v & 1) != 0)];
            Console.WriteLine($"\n{fact.Term.Question}");
            for (var i = 0; i < values.Count; i++) Console.WriteLine($"  {i + 1}  {values[i]}");
            Console.Write(fact.Term.Band is { } band ? $"number, or {band.Unit} ({band.Low} to {band.High}) as '= 12' > " : "number > ");
            Console.Out.Flush();
            var typed = Console.ReadLine()?.Trim();
            if (typed is null) break;
            if (typed is "" or "?") { declined.Add(fact.Index); continue; }
            var value = Chosen(table.Sheet, fact, values, typed);
            if (value < 0) { Console.WriteLine($"  '{typed}' is none of these; type 1 to {values.Count}, or ? when it is not known"); continue; }
            situation = situation.With(fact.Index, 1UL << value);
            given.Add($"{fact.Name} is {fact.Values[value]}");
        }
        return (situation, given);
    }

    private static int Chosen(CodeSheet sheet, BoundTerm fact, List<string> values, string typed)
    {
        if (typed[0] == '=' && fact.Term.Band is not null && double.TryParse(typed[1..], System.Globalization.CultureInfo.InvariantCulture, out var number)) return sheet.BandOf(fact.Index, number);
        if (int.TryParse(typed, out var at) && at >= 1 && at <= values.Count) return fact.ValueIndex(values[at - 1]);
        return values.Any(v => Words.Same(v, typed)) ? fact.ValueIndex(typed) : -1;
    }

    private static int Subjects(Request request)
    {
        foreach (var group in Library.Codes(request).Sheets.OrderBy(s => s.Name, StringComparer.Ordinal).GroupBy(s => s.Group).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Console.WriteLine(group.Key);
            foreach (var sheet in group) Console.WriteLine($"  {sheet.Name,-36} {sheet.About}");
        }
        return Verb.Fine;
    }
}
