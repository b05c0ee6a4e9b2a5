namespace Umpirage.District.Clinic;

/// <summary>The content units that clinics teach, and the kinds of certificates. Data: codes/clinic/certificates.txt.</summary>
public sealed record CertificateBook(IReadOnlyList<ContentUnit> Units, IReadOnlyList<CertificateKind> Kinds)
{
    public static CertificateBook Empty { get; } = new([], []);

    /// <summary>What a unit is called; its id where it is none of these any more.</summary>
    public string Title(string unit) => Units.FirstOrDefault(u => u.Id == unit)?.Title ?? unit;

    public CertificateKind? Find(string kind) => Kinds.FirstOrDefault(k => k.Id == kind);
}
