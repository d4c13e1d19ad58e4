namespace Traceability.Web.Features.Public.Verify;

/// <summary>
/// What can be said about a certificate to anybody: was it issued here, is it the latest word on its unit, and, of a file, is it the one
/// that was issued. Nothing private: no customer, no person, no values.
/// </summary>
/// <param name="Genuine" example="true">True when it was issued here.</param>
/// <param name="Current" example="true">True when it is the latest word on its unit, and the unit is as it says.</param>
/// <param name="Unaltered" example="true">Of a file: true when it is, byte for byte, as issued; null without a file.</param>
/// <param name="Words" example="Genuine and current.">The same in words.</param>
/// <param name="CertificateId" example="7KQ2-M4XA-9PLT">The id that is printed on it.</param>
/// <param name="Serial" example="US-0034">The unit's serial.</param>
/// <param name="Model" example="TARN-2">The unit's model.</param>
/// <param name="Revision" example="1">The certificate's revision.</param>
/// <param name="LatestRevision" example="1">The latest revision of the unit's certificate.</param>
/// <param name="IssuedAt" example="2026-01-31T14:20:00Z">When it was issued.</param>
/// <param name="PdfSha256" example="9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08">
/// SHA-256 of the file that was issued, in hexadecimal.
/// </param>
public sealed record Verified(
    bool Genuine,
    bool Current,
    bool? Unaltered,
    string Words,
    string? CertificateId = null,
    string? Serial = null,
    string? Model = null,
    int? Revision = null,
    int? LatestRevision = null,
    DateTimeOffset? IssuedAt = null,
    string? PdfSha256 = null
);
