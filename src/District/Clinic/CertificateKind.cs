using Umpirage.District.People;

namespace Umpirage.District.Clinic;

/// <summary>A piece of content that clinics teach, wherever and whenever: attended is the content, not the evening. Good for so many days.</summary>
public sealed record ContentUnit(string Id, string Title, int Days);

/// <summary>What one kind of certificate takes and allows: its scope (code's game and division, position), content units, test, cut score and validity.</summary>
/// <param name="Questions">How many questions of each group a form has.</param>
/// <param name="Judged">The percentages at which single judges would set the cut: their mean is the cut score.</param>
public sealed record CertificateKind(
    string Id, string Title, string Code, Position Position, IReadOnlyList<ContentUnit> Units, IReadOnlyList<(string Group, int Count)> Questions, int Forms, IReadOnlyList<double> Judged, int Days)
{
    /// <summary>The cut score, in percent of the questions.</summary>
    public double Cut => Judged.Average();

    /// <summary>The standard error of the cut score, in percent: what other judges might have said. None with a single judge.</summary>
    public double? CutError => Judged.Count < 2 ? null : Math.Sqrt(Judged.Sum(j => (j - Cut) * (j - Cut)) / (Judged.Count - 1) / Judged.Count);

    public int Length => Questions.Sum(q => q.Count);

    /// <summary>Right answers needed to pass.</summary>
    public int Needed => (int)Math.Ceiling(Cut / 100 * Length - 1e-9);
}
