namespace Umpirage.District.People;

/// <summary>That a person has a calendar address of their own. Only a digest of its secret is kept: the address is shown once, and a new one ends the old.</summary>
/// <param name="Digest">SHA-256 of the secret, in hexadecimal digits.</param>
/// <param name="At">UTC.</param>
public sealed record FeedKey(string Person, string Digest, DateTime At);
