using Traceability.Documents.Drawing;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>What the unit is made of, what it carries openly, with what and by whom it was made, and how far all this speaks.</summary>
internal static class BuildSections
{
    private const double IndentStep = 9,
        DeepestIndent = 45;

    public static IEnumerable<Strip> Contents(CertificateDocument certificate)
    {
        var supplied = certificate.Contents.Any(row => row.Supplier is not null || row.SupplierLot is not null);
        var table = NewTable(
                new("Position", 0.25),
                new("Kind", 0.14),
                new(certificate.Contents.Any(IsNumberedLot) ? "Serial or lot" : "Serial", 0.16),
                new("Model or data", 0.24),
                new(supplied ? "Supplier and its lot" : "", 0.21)
            )
            .WithHeading();
        foreach (var row in certificate.Contents)
        {
            var indent = Math.Min(row.Depth * IndentStep, DeepestIndent);
            table.AddRow(
                [
                    new Cell(row.Position, row.Depth == 0 ? TextStyle.Strong : null, Indent: indent),
                    row.Kind,
                    new Cell(row.Identifier, row.Depth == 0 || row.Film is not null ? TextStyle.Strong : null),
                    new Cell(row.Model ?? (row.Film is { } film ? CertificateWords.Film(film) : "")),
                    new Cell(CertificateWords.Supplied(row.Supplier, row.SupplierLot), TextStyle.Note),
                ],
                fill: row.Film is null ? null : Ink.BrassPale
            );
        }
        return table.Strips;
    }

    private static bool IsNumberedLot(ContentRow row) => row.Model is null && row.Identifier.Length > 0;

    public static IEnumerable<Strip> Nonconformities(CertificateDocument certificate)
    {
        var table = NewTable(new("Part and stage", 0.19), new("What did not conform", 0.31), new("Decision", 0.29), new("Decided by", 0.21))
            .WithHeading();
        foreach (var carried in certificate.Nonconformities)
        {
            table.AddRow([
                new Cell(carried.PartSerial, Note: carried.StageTitle),
                new Cell(CertificateWords.Typeset(carried.Description), Note: $"raised {CertificateWords.Moment(carried.RaisedAt)}"),
                new Cell(
                    carried.Disposition,
                    TextStyle.Strong,
                    carried.Limits is { } limits ? $"{CertificateWords.Typeset(limits)}\n{carried.Reason}" : carried.Reason
                ),
                new Cell(carried.DecidedBy, Note: CertificateWords.Moment(carried.DecidedAt)),
            ]);
        }
        return table.Strips;
    }

    public static IEnumerable<Strip> Instruments(CertificateDocument certificate)
    {
        var table = NewTable(
                new("Code", 0.14),
                new("Instrument", 0.3),
                new("Calibrated", 0.14),
                new("Next due", 0.14),
                new("Calibration record", 0.28)
            )
            .WithHeading();
        foreach (var instrument in certificate.Instruments)
        {
            table.AddRow([
                new Cell(instrument.Code, TextStyle.Strong),
                instrument.Title ?? instrument.Kind,
                instrument.CalibratedOn is null ? "none in force" : CertificateWords.Day(instrument.CalibratedOn),
                CertificateWords.Day(instrument.DueOn),
                instrument.CalibrationReference ?? CertificateWords.None,
            ]);
        }
        return table.Strips;
    }

    public static IEnumerable<Strip> People(CertificateDocument certificate)
    {
        var table = NewTable(new("Stage", 0.27), new("Part", 0.14), new("Name", 0.19), new("Role", 0.17), new("When", 0.23)).WithHeading();
        foreach (var deed in certificate.BuiltBy)
            table.AddRow([deed.StageTitle, deed.PartSerial, Name(deed), deed.Role, CertificateWords.Moment(deed.At)]);

        var release = certificate.ReleasedBy;
        table.AddRow(
            [
                .. new[]
                {
                    release.StageTitle,
                    release.PartSerial,
                    Name(release),
                    release.Role,
                    CertificateWords.Moment(release.At),
                }.Select(text => new Cell(text, TextStyle.Strong)),
            ],
            fill: Ink.BrassPale
        );
        return table.Strips;
    }

    private static string Name(StageSignature by) => by.Name == by.Role ? CertificateWords.None : by.Name;

    public static IEnumerable<Strip> Statements(CertificateDocument certificate)
    {
        var table = NewTable(new("Term", 0.22), new("Statement", 0.78));
        foreach (var statement in certificate.Statements)
            table.AddRow([new Cell(statement.Term, TextStyle.Strong), statement.Text]);
        table.AddRow([new Cell("How far this speaks", TextStyle.Strong), certificate.Scope]);
        return table.Strips;
    }

    private static Table NewTable(params Column[] columns) => new(Sheet.Margin, Sheet.Inner, columns);
}
