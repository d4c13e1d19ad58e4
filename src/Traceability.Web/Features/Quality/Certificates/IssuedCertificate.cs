namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>One revision of a unit's birth certificate, as it was issued.</summary>
/// <param name="Revision" example="2">Its number, from 1.</param>
/// <param name="CertificateId" example="7QK4M2XT9B">What it is verified by.</param>
/// <param name="IssuedAt" example="2026-11-25T14:20:00Z">When it was issued.</param>
/// <param name="PdfSha256" example="9f2c5a7d0b1e4c3a8d6f2b7e9a1c4d5e6f708192a3b4c5d6e7f8091a2b3c4d5e">
/// SHA-256 of the PDF, in hexadecimal.
/// </param>
/// <param name="DocumentSha256" example="1a4d7f0c3b6e9a2d5c8f1b4e7a0d3c6f9b2e5a8d1c4f7b0e3a6d9c2f5b8e1a4d">
/// SHA-256 of the document for programs, in hexadecimal.
/// </param>
public sealed record IssuedCertificate(
    int Revision,
    string CertificateId,
    DateTimeOffset IssuedAt,
    string PdfSha256,
    string DocumentSha256
);
