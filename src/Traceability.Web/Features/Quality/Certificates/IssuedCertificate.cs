namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>One revision of a unit's birth certificate, as it was issued.</summary>
public sealed record IssuedCertificate(
    int Revision,
    string CertificateId,
    DateTimeOffset IssuedAt,
    string PdfSha256,
    string DocumentSha256
);
