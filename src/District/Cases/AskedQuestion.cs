namespace Umpirage.District.Cases;

/// <summary>A rule question as it was asked at the desk, and the ruling given. <paramref name="At"/> is UTC.</summary>
public sealed record AskedQuestion(string Key, DateTime At, string By, string Words, string Sheet, string Code, string Facts, string Ruling, string Log, bool Open);
