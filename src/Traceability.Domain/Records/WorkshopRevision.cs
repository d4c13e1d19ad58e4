using Traceability.Domain.Values;

namespace Traceability.Domain.Records;

/// <summary>How people are called on certificates.</summary>
public enum NamesOnCertificates
{
    /// <summary>By their names.</summary>
    Full,

    /// <summary>By the first letters of their names.</summary>
    Initials,

    /// <summary>By the roles that they held; no name leaves the workshop.</summary>
    Role,
}

/// <summary>
/// What the workshop says about itself, whole: the highest <c>Revision</c> (from 1) is in force. <c>TimeZone</c> is a name of the IANA time
/// zone database, <c>Language</c> a short name of BCP 47. The logo's bytes are kept under <c>LogoSha256</c>. <c>Shows...</c> say which
/// sections a certificate shows to the customer. <c>SingleHanded</c> puts a second sign-in with a reason in the place of a second person.
/// </summary>
public sealed record WorkshopRevision(
    Guid Id,
    int Revision,
    string Name,
    string? Address,
    string? Contact,
    string TimeZone,
    string? PublicUrl,
    string Language,
    DayStyle DayStyle,
    string? WarrantyTerms,
    bool ShowsSuppliers,
    bool ShowsLotNumbers,
    bool ShowsReworks,
    NamesOnCertificates Names,
    bool SingleHanded,
    string? LogoSha256,
    string? LogoType,
    string? Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>The one chain of the ledger that all revisions stand in; no other subject has this id.</summary>
    public static readonly Guid Subject = new("77000000-0000-7000-8000-000000000001");
}
