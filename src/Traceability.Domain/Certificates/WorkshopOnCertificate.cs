using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;

namespace Traceability.Domain.Certificates;

/// <summary>The workshop as it speaks in a certificate: what held when it was issued.</summary>
/// <param name="Name">Its name; empty when nobody has said it.</param>
/// <param name="TimeZone">Its time zone, by the name in the IANA database.</param>
public sealed record WorkshopOnCertificate(string Name, string TimeZone)
{
    /// <summary>The revision of the workshop; null when nobody has filled in its page.</summary>
    public int? Revision { get; init; }

    /// <summary>Where it is, in lines.</summary>
    public string? Address { get; init; }

    /// <summary>How it is reached, in lines.</summary>
    public string? Contact { get; init; }

    /// <summary>What it promises about warranty.</summary>
    public string? WarrantyTerms { get; init; }

    /// <summary>How days are written.</summary>
    public DayStyle DayStyle { get; init; }

    /// <summary>SHA-256 of its logo.</summary>
    public string? LogoSha256 { get; init; }

    /// <summary>What the customer is shown.</summary>
    public ShownSections Shown { get; init; } = ShownSections.None;

    /// <summary>How people are called.</summary>
    public NamesOnCertificates Names { get; init; }
}
