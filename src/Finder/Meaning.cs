namespace Umpirage.Finder;

/// <summary>What a sentence means to the model: one direction for the whole, of length one, and a row of numbers for each word.</summary>
/// <param name="Words">Word after word; a word beyond what the model can hold has only zeros.</param>
internal sealed record Meaning(float[] Whole, float[] Words)
{
    public int Count => Words.Length / Encoder.Size;

    public ReadOnlySpan<float> Word(int word) => Words.AsSpan(word * Encoder.Size, Encoder.Size);
}
