namespace Umpirage.District.People;

/// <summary>Age as far as anybody here needs to know it. Birth dates are not kept.</summary>
public enum AgeBand { Under13, From13To15, From16To17, Adult, Over70 }

public static class AgeBands
{
    /// <summary>The band in words, as shown and as written in files.</summary>
    public static string Words(this AgeBand band) => band switch
    {
        AgeBand.Under13 => "under 13", AgeBand.From13To15 => "13-15", AgeBand.From16To17 => "16-17", AgeBand.Adult => "adult", _ => "over 70",
    };

    public static bool IsMinor(this AgeBand band) => band <= AgeBand.From16To17;

    public static AgeBand? Read(string text) => Enum.GetValues<AgeBand>().Cast<AgeBand?>().FirstOrDefault(b => Rules.Ground.Words.Same(b!.Value.Words(), text));
}
