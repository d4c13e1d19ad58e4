using Traceability.Documents.Drawing;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>The sections of a certificate in the order in which its owner will care about them; an empty one is left out.</summary>
internal static class CertificateBody
{
    public static IReadOnlyList<Strip> Strips(CertificateDocument certificate, Logo? logo) =>
        [
            .. Masthead.Strips(certificate, logo),
            .. Section(
                $"What changed since revision {certificate.Revision - 1}",
                certificate.Supersedes is null ? 0 : 1,
                ChangesSection.Strips(certificate)
            ),
            .. Section("Acoustic results by pattern", certificate.Patterns.Count, AcousticSections.Patterns(certificate)),
            .. Section("Curves", certificate.Curves.Count, AcousticSections.Curves(certificate)),
            .. Section("What is inside", certificate.Contents.Count, BuildSections.Contents(certificate)),
            .. Section("Measured values", certificate.Measurements.Count, MeasuredSection.Strips(certificate)),
            .. Section("Climate soak", certificate.Soaks.Count, MeasuredSection.Soaks(certificate)),
            .. Section(
                "What did not conform, and what was decided",
                certificate.Nonconformities.Count,
                BuildSections.Nonconformities(certificate)
            ),
            .. Section(
                "Instruments, with the calibration in force at the measurement",
                certificate.Instruments.Count,
                BuildSections.Instruments(certificate)
            ),
            .. Section("Who did it", certificate.BuiltBy.Count + 1, BuildSections.People(certificate)),
            .. Section("What the values mean", certificate.Statements.Count + 1, BuildSections.Statements(certificate)),
        ];

    private static IEnumerable<Strip> Section(string title, int entries, IEnumerable<Strip> body) =>
        entries == 0 ? [] : [.. Prose.Heading(title, Sheet.Margin, Sheet.Inner), .. body];
}
