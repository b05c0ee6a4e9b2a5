namespace Umpirage.District.People;

/// <summary>One thing wrong in what was entered: the field, what was found there, what is allowed.</summary>
public sealed record FieldFault(string Field, string Found, string Allowed)
{
    public override string ToString() => $"{Field}: found {(Found == "" ? "nothing" : $"'{Found}'")}; allowed is {Allowed}";
}
