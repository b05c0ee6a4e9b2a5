namespace Umpirage.Tune;

/// <summary>How lessons are taken. All was chosen on the questions held out.</summary>
internal sealed record Course
{
    public int Rounds { get; init; } = 6;
    public int Batch { get; init; } = 32;
    public int Rank { get; init; } = 16;
    public int Threads { get; init; } = 2;
    /// <summary>How wide what labels listen for is.</summary>
    public int Width { get; init; } = 128;
    public float Pace { get; init; } = 4e-3f;
    /// <summary>The model's own layers learn more slowly.</summary>
    public float ModelPace { get; init; } = 0.25f;
    public float TermPace { get; init; } = 3;
    /// <summary>So many of the words, of the numbers of the whole, of the numbers of each word, and of the terms are left out by chance while learning.</summary>
    public float WordsOut { get; init; } = 0.1f;
    public float WholeOut { get; init; } = 0.1f;
    public float NumbersOut { get; init; } = 0.15f;
    public float TermsOut { get; init; } = 0.3f;
    public float Smoothing { get; init; } = 0.05f;
    /// <summary>What facts count beside the subject; the words that tell them beside that; and a fact known of a play, which its words need not tell.</summary>
    public float FactShare { get; init; } = 0.5f;
    public float ToldShare { get; init; } = 0.5f;
    public float PlayShare { get; init; } = 0.3f;
    /// <summary>A sheet's own sentence counts less than a question.</summary>
    public float SheetShare { get; init; } = 0.5f;
    /// <summary>How terms are learned alone, and what that counts beside what was learned together.</summary>
    public int TermRounds { get; init; } = 10;
    public float TermsAlonePace { get; init; } = 0.05f;
    public float TermsAloneShare { get; init; } = 0.4f;
    /// <summary>Terms in fewer lessons are left out.</summary>
    public int RareTerm { get; init; } = 3;
}
