using Traceability.Documents.Charts;
using Traceability.Documents.Drawing;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>Measured values stage by stage, and the climate soak as it was logged.</summary>
internal static class MeasuredSection
{
    private const double SoakHeight = 170;

    private static readonly Column[] Columns =
    [
        new("Characteristic", 0.31),
        new("Value", 0.11, Right: true),
        new("Unit", 0.09),
        new("Limits", 0.14),
        new("Nominal", 0.09),
        new("Uncertainty", 0.14),
        new("Verdict", 0.12),
    ];

    public static IEnumerable<Strip> Strips(CertificateDocument certificate)
    {
        var table = new Table(Sheet.Margin, Sheet.Inner, Columns).WithHeading();
        foreach (var stage in certificate.Measurements)
        {
            table.AddGroup($"{stage.StageTitle}  ·  {stage.PartKind} {stage.PartSerial}  ·  {CertificateWords.Moment(stage.ClosedAt)}");
            foreach (var value in stage.Values)
                table.AddRow(Cells(value), CertificateWords.Typeset(value.CorrectedNote));
        }
        return table.Strips;
    }

    public static IEnumerable<Strip> Soaks(CertificateDocument certificate) =>
        certificate.Soaks.SelectMany(soak =>
            AcousticSections.Picture(
                $"{soak.Title}  ·  {soak.PartSerial}",
                SoakHeight,
                SoakChart.Describe(soak),
                (graphics, rect) => SoakChart.Draw(graphics, rect, soak),
                soak.Conclusion
            )
        );

    private static IReadOnlyList<Cell> Cells(MeasuredValue value) =>
        [
            value.Label,
            new Cell(CertificateWords.Typeset(value.Value), TextStyle.Strong),
            value.Unit,
            CertificateWords.Limits(value),
            CertificateWords.Number(value.Nominal),
            value.Uncertainty is { } uncertainty ? new Cell(uncertainty, TextStyle.Note) : CertificateWords.None,
            new Cell(value.Verdict, VerdictStyle(value.Verdict)),
        ];

    private static TextStyle VerdictStyle(string verdict) =>
        verdict switch
        {
            VerdictWords.Within => TextStyle.Body,
            VerdictWords.ForInformation or "" => TextStyle.Note,
            _ => TextStyle.Alert,
        };
}
