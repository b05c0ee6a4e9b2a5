using Umpirage.District.Crews;

namespace Umpirage.Solve.Crews;

/// <summary>Places that are open: games without an umpire, bases played with one less, youth bases; the first counts most.</summary>
internal readonly record struct Left(int Plates, int Bases, int Youth)
{
    public const int Kinds = 3;

    public Left(IReadOnlyList<string> open)
        : this(open.Count(p => p == CrewPlace.Plate), open.Count(p => p != CrewPlace.Plate && CrewPlace.IsRequired(p)), open.Count(p => !CrewPlace.IsRequired(p))) { }

    public static Left In(CrewPlan plan, IReadOnlyList<CrewGame> games) => new([.. games.SelectMany(plan.Open)]);

    public int this[int kind] => kind switch { 0 => Plates, 1 => Bases, _ => Youth };

    public bool IsLessThan(Left other) => (Plates, Bases, Youth).CompareTo((other.Plates, other.Bases, other.Youth)) < 0;
}
