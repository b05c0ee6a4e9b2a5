using Umpirage.Rules.Codes;

namespace Umpirage.District.Clinic;

/// <summary>What lessons are made of: the codes, their sentences, how lessons are cut, and what many believe. <paramref name="Asked"/>: how often each subject is asked about; one not named counts as 0.</summary>
public sealed record Syllabus(Codebook Book, PhraseBook Phrases, LessonPlan Plan, IReadOnlyList<Misbelief> Beliefs, IReadOnlyDictionary<string, int> Asked);
