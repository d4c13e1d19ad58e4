using PdfSharp.Drawing;
using Traceability.Documents.Charts;
using Traceability.Documents.Drawing;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>What the finished unit does: a table over its patterns, and its curves.</summary>
internal static class AcousticSections
{
    private const int MostColumns = 5;

    private const double CurveHeight = 152;

    public static IEnumerable<Strip> Patterns(CertificateDocument certificate) =>
        certificate
            .Patterns.SelectMany(pattern => pattern.Values)
            .Select(value => (value.Label, value.Unit))
            .Distinct()
            .Chunk(MostColumns)
            .SelectMany(labels => PatternTable(certificate.Patterns, labels));

    private static IReadOnlyList<Strip> PatternTable(IReadOnlyList<PatternResult> patterns, (string Label, string? Unit)[] labels)
    {
        var share = 0.8 / Math.Max(3, labels.Length);
        var columns = labels.Select(label => new Column(label.Unit is null ? label.Label : $"{label.Label}, {label.Unit}", share));
        var table = new Table(Sheet.Margin, Sheet.Inner, [new Column("Pattern", 0.2), .. columns]).WithHeading();
        foreach (var pattern in patterns)
        {
            table.AddRow(
                [new Cell(pattern.Pattern, TextStyle.Strong), .. labels.Select(label => Result(pattern, label))],
                string.Join(
                    "\n",
                    pattern
                        .Values.Where(value => labels.Contains((value.Label, value.Unit)))
                        .Select(value => value.CorrectedNote)
                        .OfType<string>()
                        .Select(CertificateWords.Typeset)
                )
            );
        }
        return table.Strips;
    }

    private static Cell Result(PatternResult pattern, (string Label, string? Unit) label)
    {
        var values = pattern.Values.Where(value => (value.Label, value.Unit) == label).ToArray();
        return values.Length == 0
            ? new Cell(CertificateWords.None, TextStyle.Note)
            : new Cell(
                string.Join("\n", values.Select(value => CertificateWords.Typeset(value.Value))),
                TextStyle.Strong,
                string.Join("\n", values.Select(Judged))
            );
    }

    private static string Judged(MeasuredValue value) =>
        string.Join(
            "\n",
            new[]
            {
                value.Lower is null && value.Upper is null ? value.Verdict : $"{value.Verdict}, {CertificateWords.Limits(value)}",
                value.Nominal is { } nominal ? $"nominal {CertificateWords.Number(nominal)}" : null,
                value.Uncertainty,
            }.Where(line => !string.IsNullOrEmpty(line))
        );

    public static IEnumerable<Strip> Curves(CertificateDocument certificate) =>
        certificate.Curves.SelectMany(curve =>
            Picture(
                curve.Title,
                CurveHeight,
                ResponseChart.Describe(curve),
                (graphics, rect) => ResponseChart.Draw(graphics, rect, curve),
                curve.ReferenceConditions
            )
        );

    /// A title, a picture and what must be said about it, kept on one page.
    internal static IEnumerable<Strip> Picture(
        string title,
        double height,
        string description,
        Action<XGraphics, XRect> draw,
        string caption
    ) =>
        [
            .. Prose.SubHeading(title, Sheet.Margin, Sheet.Inner),
            new Strip(
                height,
                (canvas, top) =>
                {
                    var rect = new XRect(Sheet.Margin, top + 2, Sheet.Inner, height - 4);
                    canvas.Figure(description, rect, () => draw(canvas.Graphics, rect));
                }
            )
            {
                KeepWithNext = true,
            },
            .. Prose.Paragraph(CertificateWords.Typeset(caption), TextStyle.Note, Sheet.Margin, Sheet.Inner),
            Strip.Space(4),
        ];
}
