using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>What holds of the workshop now.</summary>
/// <param name="Revision" example="3">The revision of its page that is in force; 0 before the first.</param>
/// <param name="Name" example="The Lower Mill Workshop">Its name; null while nobody has said it.</param>
/// <param name="Address" example="Mill Lane 4, Lower Mill">Where it is, in lines.</param>
/// <param name="Contact" example="bench@workshop.example">How it is reached, in lines.</param>
/// <param name="TimeZone" example="Europe/Berlin">Its time zone, by the name in the IANA database.</param>
/// <param name="PublicUrl" example="https://workshop.example">The address by which its service is reached from outside.</param>
/// <param name="Language" example="en">The short name of the language that it works in.</param>
/// <param name="WarrantyTerms" example="Two years on material and work.">What certificates say of warranty.</param>
/// <param name="CertificateSections">What certificates show to the customer.</param>
/// <param name="NamesOnCertificates" example="initials">How people are called on certificates.</param>
/// <param name="SingleHanded" example="false">Whether one person may do what two should, with a second sign-in and a reason.</param>
/// <param name="LogoSha256" example="9f2c5a7d0b1e4c3a8d6f2b7e9a1c4d5e6f708192a3b4c5d6e7f8091a2b3c4d5e">
/// SHA-256 of the logo's bytes, in hexadecimal; null without one.
/// </param>
/// <param name="Overrides">What was set at the start of the service and goes before the page.</param>
/// <param name="Demonstration" example="false">True for the invented demonstration.</param>
/// <param name="Reason" example="moved house">Why the revision was made, when it was said.</param>
/// <param name="By">Who made the revision; null before the first.</param>
/// <param name="At" example="2026-11-29T14:20:00Z">When.</param>
public sealed record WorkshopAnswer(
    int Revision,
    string? Name,
    string? Address,
    string? Contact,
    string TimeZone,
    string? PublicUrl,
    string Language,
    string? WarrantyTerms,
    CertificateSections CertificateSections,
    NamesOnCertificates NamesOnCertificates,
    bool SingleHanded,
    string? LogoSha256,
    IReadOnlyList<WorkshopOverride> Overrides,
    bool Demonstration,
    string? Reason,
    Who? By,
    DateTimeOffset? At
)
{
    public static WorkshopAnswer Of(WorkshopFacts facts, Who? by)
    {
        var r = facts.Revision;
        return new(
            r?.Revision ?? 0,
            facts.Workshop,
            r?.Address,
            r?.Contact,
            facts.TimeZone,
            facts.PublicUrl,
            facts.Language,
            r?.WarrantyTerms,
            r is null ? CertificateSections.None : new(r.ShowsSuppliers, r.ShowsLotNumbers, r.ShowsReworks),
            r?.Names ?? NamesOnCertificates.Full,
            r?.SingleHanded ?? false,
            r?.LogoSha256,
            [.. facts.Set.Fields.Where(f => !(facts.Demo && f.Field == "name")).Select(f => new WorkshopOverride(f.Field, f.Setting))],
            facts.Demo,
            r?.Reason,
            by,
            r?.OccurredAt
        );
    }
}

/// <summary>Which sections a certificate shows to the customer.</summary>
/// <param name="Suppliers" example="false">Who supplied the lots in the unit.</param>
/// <param name="LotNumbers" example="false">The numbers of those lots, the workshop's and the suppliers'.</param>
/// <param name="Reworks" example="false">What did not conform and was put right before the unit was finished.</param>
public sealed record CertificateSections(bool Suppliers, bool LotNumbers, bool Reworks)
{
    internal static readonly CertificateSections None = new(false, false, false);

    internal ShownSections Shown => new(Suppliers, LotNumbers, Reworks);
}

/// <summary>A field that was set at the start of the service.</summary>
/// <param name="Field" example="timeZone">The field, as this answer calls it.</param>
/// <param name="Setting" example="TRACEABILITY_TIMEZONE">The environment variable that sets it.</param>
public sealed record WorkshopOverride(string Field, string Setting);
