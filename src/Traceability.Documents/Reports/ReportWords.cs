using System.Globalization;
using Traceability.Documents.Certificates;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Reports;

/// <summary>How a report words its numbers.</summary>
internal static class ReportWords
{
    /// "91.7 %", or a dash where there is none.
    public static string Percent(double? share) =>
        share is { } known ? string.Create(CultureInfo.InvariantCulture, $"{100 * known:0.0} %") : CertificateWords.None;

    /// "11 of 12".
    public static string Counts(ReportedShare share) =>
        share.Passed is { } passed ? $"{passed} of {share.Of}"
        : share.Of == 1 ? "1 stage"
        : $"{share.Of} stages";

    /// "61.6 to 98.5 %", or why there is no share.
    public static string Range(ReportedShare share) =>
        share is { Lower: { } lower, Upper: { } upper }
            ? string.Create(CultureInfo.InvariantCulture, $"{100 * lower:0.0} to {100 * upper:0.0} %")
            : share.NotEnough ?? "";

    /// "0.031", "below 0.001".
    public static string P(double? p) =>
        p switch
        {
            null => CertificateWords.None,
            < 0.001 => "below 0.001",
            { } known => known.ToString("0.000", CultureInfo.InvariantCulture),
        };
}
