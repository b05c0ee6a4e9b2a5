using System.Numerics.Tensors;
using Umpirage.Finder;
using Umpirage.Rules.Codes;

namespace Umpirage.Tune;

/// <summary>Takes from the network what the finder needs.</summary>
internal static class Take
{
    public static Learned From(Network network, IReadOnlyList<Sheet> sheets, string key, string figures, Floors floors)
    {
        var subjects = new List<LearnedSubject>();
        for (var s = 0; s <= sheets.Count; s++)
        {
            var takes = network.Subjects.Takes.Row(s).ToArray();
            TensorPrimitives.Multiply(takes, SubjectLearner.Long, takes);
            subjects.Add(new(s < sheets.Count ? sheets[s].Name : "", takes, network.Subjects.Bias.Numbers[s], s < sheets.Count ? network.Facts.LabelsOf(s) : []));
        }
        return new()
        {
            Key = key, Figures = figures, Changes = network.Changes, Subjects = subjects, Terms = Terms(network.Subjects), Facts = network.Facts.Head, Floors = floors,
            Middle = new float[Encoder.Size],
        };
    }

    private static TermBook Terms(SubjectLearner learner)
    {
        var subjects = learner.Terms.Columns;
        var (scale, tells) = (new float[learner.Telling.Length], new sbyte[learner.Telling.Length * subjects]);
        for (var i = 0; i < scale.Length; i++)
        {
            var row = learner.Terms.Row(i);
            scale[i] = Math.Max(Math.Abs(TensorPrimitives.MaxMagnitude<float>(row)), 1e-9f) / sbyte.MaxValue;
            for (var s = 0; s < subjects; s++) tells[i * subjects + s] = (sbyte)MathF.Round(row[s] / scale[i]);
        }
        return new(learner.TermNames, learner.Telling, scale, tells, subjects);
    }
}
