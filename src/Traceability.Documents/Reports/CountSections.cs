using System.Globalization;
using Traceability.Documents.Certificates;
using Traceability.Documents.Drawing;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Reports;

/// <summary>The sections that count and list: output, failure codes, what waits, what is stopped, what came back, what is due.</summary>
internal static class CountSections
{
    public static IEnumerable<Strip> Output(OutputSection output)
    {
        if (output.ByModel.Count == 0)
            return [];

        var table = NewTable(
                new("Model", 0.46),
                new("Finished", 0.18, Right: true),
                new("Shipped", 0.18, Right: true),
                new("of these sent again", 0.18, Right: true)
            )
            .WithHeading();
        foreach (var model in output.ByModel)
            table.AddRow([new Cell(model.Model, TextStyle.Strong), Number(model.Finished), Number(model.Shipped), Number(model.SentAgain)]);
        if (output.ByModel.Count > 1)
            table.AddRow(
                [
                    .. new[] { "All models", Number(output.Finished), Number(output.Shipped), Number(output.SentAgain) }.Select(
                        text => new Cell(text, TextStyle.Strong)
                    ),
                ],
                fill: Ink.BrassPale
            );
        return table.Strips;
    }

    public static IEnumerable<Strip> Failures(FailureSection failures)
    {
        if (failures.Bars.Count == 0)
            return [];

        var table = NewTable(
                new("Code", 0.34),
                new("Count", 0.1, Right: true),
                new("", 0.3),
                new("Share", 0.13, Right: true),
                new("Together", 0.13, Right: true)
            )
            .WithHeading();
        foreach (var (bar, place) in failures.Bars.Select((bar, place) => (bar, place)))
        {
            table.AddRow(
                [
                    new Cell(bar.Code, place < failures.VitalFew ? TextStyle.Strong : null),
                    Number(bar.Count),
                    ShareMark.Bar((double)bar.Count / failures.Bars[0].Count),
                    ReportWords.Percent(bar.Share),
                    ReportWords.Percent(bar.Cumulative),
                ],
                fill: place < failures.VitalFew ? Ink.BrassPale : null
            );
        }
        return
        [
            .. table.Strips,
            .. Sentence(
                $"{failures.Failures} in all; the {failures.VitalFew} most frequent"
                    + $" {(failures.VitalFew == 1 ? "code makes" : "codes make")} up 80 % of them or more."
            ),
        ];
    }

    public static IEnumerable<Strip> Waiting(WaitingSection waiting)
    {
        if (waiting.Lines.Count == 0)
            return [];

        var table = NewTable(new("Age", 0.09, Right: true), new("Part", 0.17), new("Stage", 0.21), new("What", 0.53)).WithHeading();
        foreach (var line in waiting.Lines)
        {
            table.AddRow([
                new Cell(Days(line.AgeDays), TextStyle.Strong),
                new Cell(line.Serial, TextStyle.Strong, line.Model),
                new Cell(line.StageTitle, Note: $"raised {CertificateWords.Moment(line.RaisedAt)}"),
                new Cell(line.Code, Note: line.Description),
            ]);
        }
        return [.. table.Strips, .. Sentence($"{waiting.Lines.Count} in all.")];
    }

    public static IEnumerable<Strip> Holds(HoldSection holds)
    {
        if (holds.Lines.Count == 0)
            return [];

        var table = NewTable(new("Age", 0.09, Right: true), new("What is held", 0.4), new("Why", 0.33), new("By", 0.18)).WithHeading();
        foreach (var line in holds.Lines)
            table.AddRow([
                new Cell(Days(line.AgeDays), TextStyle.Strong),
                line.What,
                line.Reason,
                new Cell(line.HeldBy, Note: CertificateWords.Moment(line.HeldAt)),
            ]);
        return [.. table.Strips, .. Sentence($"{holds.Holds} {(holds.Holds == 1 ? "hold" : "holds")} in all.")];
    }

    public static IEnumerable<Strip> Returns(ReturnSection returns)
    {
        if (returns.Lines.Count == 0)
            return [];

        var table = NewTable(new("Unit", 0.18), new("Complaint", 0.3), new("Found", 0.28), new("Done", 0.24)).WithHeading();
        foreach (var line in returns.Lines)
            table.AddRow([
                new Cell(line.Serial, TextStyle.Strong, $"{line.Model}\n{CertificateWords.Moment(line.ReturnedAt)}"),
                line.Complaint,
                line.Found,
                line.Done,
            ]);
        return [.. table.Strips, .. Sentence($"{returns.Lines.Count} in all.")];
    }

    public static IEnumerable<Strip> Instruments(InstrumentSection instruments)
    {
        if (instruments.Lines.Count == 0)
            return [];

        var table = NewTable(
                new("Code", 0.16),
                new("Instrument", 0.28),
                new("Calibrated", 0.14),
                new("Due", 0.14),
                new("Why it stands here", 0.28)
            )
            .WithHeading();
        foreach (var line in instruments.Lines)
            table.AddRow([
                new Cell(line.Code, TextStyle.Strong),
                line.Title,
                CertificateWords.Day(line.CalibratedOn),
                CertificateWords.Day(line.DueOn),
                line.Why,
            ]);
        return table.Strips;
    }

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Days(int days) => $"{days} d";

    private static IEnumerable<Strip> Sentence(string text) =>
        [Strip.Space(4), .. Prose.Paragraph(text, TextStyle.Body, Sheet.Margin, Sheet.Inner)];

    private static Table NewTable(params Column[] columns) => new(Sheet.Margin, Sheet.Inner, columns);
}
