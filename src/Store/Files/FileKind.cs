namespace Umpirage.Store.Files;

/// <summary>
/// A kind of file: its columns, how a row becomes records, and how records become rows. A row stands for its own records only: reading it
/// again changes nothing, and what it no longer says of its own is removed.
/// </summary>
public abstract class FileKind
{
    public abstract string Name { get; }
    public abstract string About { get; }
    public abstract IReadOnlyList<Column> Columns { get; }

    /// <summary>What a row stands for. Faults go to the row; what is returned then is not used.</summary>
    public abstract IReadOnlyList<object> Read(Row row, Known known);

    /// <summary>The key under which a row's records hang together.</summary>
    public abstract string Owner(object record);

    /// <summary>Everything on record that rows of this kind stand for.</summary>
    public abstract IEnumerable<object> Stored(DistrictStore store);

    /// <summary>The stored records as rows, in the order of the columns.</summary>
    public abstract IEnumerable<string?[]> Write(DistrictStore store);

    /// <summary>Whether its rows give places to people, so that they are held against the safety rules of crews.</summary>
    public virtual bool SetsCrews => false;

    public static IReadOnlyList<FileKind> All { get; } =
    [
        new LeagueFile(), new DivisionFile(), new TeamFile(), new ParkFile(), new DiamondFile(), new PersonFile(), new ClearanceFile(), new CertificateFile(),
        new AvailabilityFile(), new AwayFile(), new GameFile(), new BlackoutFile(), new ApprovalFile(), new InterestFile(), new PairingFile(), new HomeFile(), new VisitFile(),
        new CoordinatorFile(), new EndingFile(), new ElsewhereFile(), new CrewFile(), new PlayerFile(), new LogFile(), new LayerFile(),
        new ClinicFile(), new AttendanceFile(), new TestFile(), new AnswerFile(), new EvaluationFile(),
    ];

    public static FileKind? Named(string name) => All.FirstOrDefault(k => Rules.Ground.Words.Same(k.Name, name));
}
