using System.Globalization;
using Umpirage.District.People;

namespace Umpirage.District.Clinic;

/// <summary>How a test came out. Close: within one standard error of the cut, where another form might have said otherwise: a retest, or a talk.</summary>
public enum Verdict { Passed, Close, NotPassed }

/// <summary>
/// Somebody sat a form of a test on a day, with a proctor: how many of the questions were right, and, in percent as they stood that day, the cut and the
/// standard error of the decision. The scope is the code and the position. <paramref name="TalkedBy"/>: who went through a close test with them; null when nobody did.
/// </summary>
public sealed record Sat(string Person, string Kind, string Form, DateOnly Day, int Right, int Of, double Cut, double Error, string Code, Position Position, string Proctor, string? TalkedBy)
{
    public double Score => 100.0 * Right / Of;

    public Verdict Verdict => Math.Abs(Score - Cut) <= Error ? Verdict.Close : Score > Cut ? Verdict.Passed : Verdict.NotPassed;

    /// <summary>Passed for good, or close at or above the cut and talked about.</summary>
    public bool Suffices => Verdict == Verdict.Passed || (Verdict == Verdict.Close && Score >= Cut && TalkedBy is not null);

    public string InWords => string.Create(CultureInfo.InvariantCulture, $"{Right} of {Of} right ({Score:0} %), the cut {Cut:0.#} % give or take {Error:0.0}: {Verdict switch
    {
        Verdict.Passed => "passed",
        Verdict.NotPassed => "not passed",
        _ when TalkedBy is not null => "within one standard error of the cut, and talked about",
        _ => "within one standard error of the cut: retest or talk",
    }}");
}
