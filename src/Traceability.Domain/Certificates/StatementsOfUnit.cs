using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Certificates;

/// <summary>
/// The conditions and definitions under which the values of a certificate hold: only those of values that stand on it, and nothing about
/// the measurement that nobody recorded.
/// </summary>
internal static class StatementsOfUnit
{
    private const string Millivolt = "mV/Pa",
        Weighted = "dBA",
        AirTemperature = "airTemperatureC";

    public static IReadOnlyList<Statement> Rows(IReadOnlyList<Dossier> parts, WorkshopOnCertificate workshop)
    {
        var stated = MeasurementsOfUnit.Stated(parts).ToList();
        var sensitivities = stated.Where(s => s.Reading.Reading.Unit == Millivolt).ToList();
        return
        [
            .. new[]
            {
                sensitivities.Count == 0 ? null : new Statement(CertificateTexts.Sensitivity, HowFound(sensitivities)),
                stated.Exists(s => s.Reading.Reading.Unit == Weighted) ? new(CertificateTexts.Noise, CertificateTexts.NoiseIsALevel) : null,
                WithoutAir(sensitivities) is { Length: > 0 } stages
                    ? new(CertificateTexts.AirIsNotRecorded, CertificateTexts.AirWasNotRecordedAt(stages))
                    : null,
                stated.Exists(s => s.Reading.Reading.ExpandedUncertainty is not null)
                    ? new(CertificateTexts.Uncertainty, CertificateTexts.UncertaintyAsTheRouteStates)
                    : null,
                new(
                    CertificateTexts.Verdict,
                    stated.Exists(s => s.Reading.Reading.Guarded is true)
                        ? CertificateTexts.VerdictGuarded
                        : CertificateTexts.VerdictByLimits
                ),
                new(CertificateTexts.Times, CertificateTexts.TimesAreOf(workshop.TimeZone)),
                workshop.WarrantyTerms is { } terms ? new(CertificateTexts.Warranty, terms) : null,
            }.OfType<Statement>(),
        ];
    }

    private static string HowFound(List<(Stage Stage, AttemptView Pass, ReadingView Reading)> sensitivities) =>
        string.Join(
            ' ',
            sensitivities
                .Select(s =>
                    s.Reading.Reading.Source == ReadingSource.Computed
                        ? CertificateTexts.SensitivityByComparison
                        : CertificateTexts.SensitivityAsRead
                )
                .Distinct()
        );

    private static string WithoutAir(IEnumerable<(Stage Stage, AttemptView Pass, ReadingView Reading)> sensitivities) =>
        string.Join(", ", sensitivities.Where(s => s.Pass.Reading(AirTemperature) is null).Select(s => s.Stage.Title).Distinct());
}
