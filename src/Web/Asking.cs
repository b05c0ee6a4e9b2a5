using Microsoft.AspNetCore.WebUtilities;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Web;

/// <summary>
/// A question on its way to a ruling: the words typed, the code, the subject, what is said so far and what is not known. It lives in the
/// page's address, so that going back takes a step back.
/// </summary>
public sealed record Asking(string Words, string Code, string Sheet, IReadOnlyList<string> Said, IReadOnlyList<string> NotKnown)
{
    public const int MostFacts = 60;

    public string Url(string page = "/ruling")
    {
        var pairs = new List<KeyValuePair<string, string?>>();
        if (Words != "") pairs.Add(new("q", Words));
        pairs.Add(new("code", Code));
        if (Sheet != "") pairs.Add(new("sheet", Sheet));
        pairs.AddRange(Said.Select(s => new KeyValuePair<string, string?>("f", s)));
        pairs.AddRange(NotKnown.Select(s => new KeyValuePair<string, string?>("n", s)));
        return QueryHelpers.AddQueryString(page, pairs);
    }

    public Asking With(string fact, string value) => this with { Said = [.. Said.Where(s => !s.StartsWith(fact + " is ", StringComparison.Ordinal)), $"{fact} is {value}"], NotKnown = [.. NotKnown.Where(n => n != fact)] };
    public Asking Without(string said) => this with { Said = [.. Said.Where(s => s != said)] };
    public Asking Unknown(string fact) => this with { NotKnown = [.. NotKnown.Where(n => n != fact), fact] };
    public Asking Under(string code) => this with { Code = code };

    /// <summary>What was said, as a play: the form in which it is ruled elsewhere and kept.</summary>
    public Play AsPlay(DateOnly day)
    {
        var play = new Play { File = "desk", Sheet = Sheet, Code = $"{Code}@{CodeAddress.Day(day)}", Situation = Words };
        play.Given.AddRange(Said.Select(s => new Phrase(s, 0)));
        return play;
    }
}
