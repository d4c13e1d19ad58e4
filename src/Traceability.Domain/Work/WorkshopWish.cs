using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work;

/// <summary>What somebody wants the workshop to say about itself, as typed. The logo comes by itself.</summary>
/// <param name="Name">The workshop's name.</param>
/// <param name="Address">Where it is, in lines.</param>
/// <param name="Contact">How it is reached: telephone, e-mail, in lines.</param>
/// <param name="TimeZone">Name of its time zone in the IANA database.</param>
/// <param name="PublicUrl">Address by which its service is reached from outside; null when it is not.</param>
/// <param name="Language">Short name of the language that it works in.</param>
/// <param name="DayStyle">How days are written.</param>
/// <param name="WarrantyTerms">What stands on certificates about warranty.</param>
/// <param name="Sections">What certificates show to the customer.</param>
/// <param name="Names">How people are called on certificates.</param>
/// <param name="SingleHanded">Whether one person may do what two should, with a second sign-in.</param>
/// <param name="Reason">Why it is changed.</param>
public sealed record WorkshopWish(
    string Name,
    string? Address,
    string? Contact,
    string TimeZone,
    string? PublicUrl,
    string Language,
    DayStyle DayStyle,
    string? WarrantyTerms,
    ShownSections Sections,
    NamesOnCertificates Names,
    bool SingleHanded,
    string? Reason
);

/// <summary>Which sections a certificate shows to the customer.</summary>
/// <param name="Suppliers">Who supplied the lots in it.</param>
/// <param name="LotNumbers">The numbers of those lots, the workshop's and the suppliers'.</param>
/// <param name="Reworks">What did not conform and was put right before the unit was finished.</param>
public sealed record ShownSections(bool Suppliers, bool LotNumbers, bool Reworks)
{
    /// <summary>What holds until somebody decides otherwise.</summary>
    public static readonly ShownSections None = new(false, false, false);
}
