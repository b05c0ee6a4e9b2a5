using Umpirage.District.Fits;
using Umpirage.Rules.Ground;

namespace Umpirage.Cli.Verbs;

/// <summary>Fits the two-parameter model to answers in a file.</summary>
internal static class FitVerb
{
    public static int Run(Request request)
    {
        if (request.Words.Count != 1) { Console.Error.WriteLine("name one file of answers: ./umpirage fit answers.csv (first line the questions' names; then 1, 0 or nothing)"); return Verb.Unusable; }
        var findings = new List<Finding>();
        var responses = Responses.Read(request.Words[0], File.ReadAllText(request.Words[0]), findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        if (responses is null) return Verb.Unusable;
        var fit = TwoParameter.Fit(responses, fine: responses.Items.Count > 50 ? 1e-4 : 1e-6);
        if (request.Json)
        {
            Json.Write(new { people = responses.People, logLikelihood = fit.LogLikelihood, rounds = fit.Rounds, settled = fit.Settled, items = fit.Names.Zip(fit.Items).Select(i => new { name = i.First, slope = i.Second.Slope, intercept = i.Second.Intercept, difficulty = i.Second.Difficulty }) });
            return fit.Settled ? Verb.Fine : Verb.No;
        }
        var wide = Math.Max(8, fit.Names.Max(n => n.Length));
        Console.WriteLine($"{"question".PadRight(wide)}     slope  intercept  difficulty");
        foreach (var (name, item) in fit.Names.Zip(fit.Items)) Console.WriteLine(FormattableString.Invariant($"{name.PadRight(wide)}  {item.Slope,8:0.0000}  {item.Intercept,9:0.0000}  {item.Difficulty,10:0.0000}"));
        Console.WriteLine(FormattableString.Invariant($"{responses.People} people, {fit.Rounds} rounds{(fit.Settled ? "" : ", not settled yet")}"));
        Console.WriteLine(FormattableString.Invariant($"log-likelihood {fit.LogLikelihood:0.0000}"));
        return fit.Settled ? Verb.Fine : Verb.No;
    }
}
