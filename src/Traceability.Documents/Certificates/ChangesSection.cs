using Traceability.Documents.Drawing;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>What was done since the revision before, so that who holds both need not compare them line by line.</summary>
internal static class ChangesSection
{
    public static IEnumerable<Strip> Strips(CertificateDocument certificate)
    {
        if (certificate.Changes.Count == 0)
        {
            return Prose.Paragraph(
                $"Nothing was recorded on the unit or on anything in it since revision {certificate.Revision - 1}; the certificate was"
                    + " issued again.",
                TextStyle.Body,
                Sheet.Margin,
                Sheet.Inner
            );
        }

        var table = new Table(
            Sheet.Margin,
            Sheet.Inner,
            new("When", 0.23),
            new("Part", 0.14),
            new("What was done", 0.3),
            new("Why", 0.2),
            new("By", 0.13)
        ).WithHeading();
        foreach (var change in certificate.Changes)
        {
            table.AddRow(
                [
                    CertificateWords.Moment(change.At),
                    change.PartSerial,
                    new Cell(CertificateWords.Sentence(change.What), TextStyle.Strong),
                    change.Why ?? "",
                    change.By,
                ],
                string.Join("\n", change.Values.Select(CertificateWords.Changed))
            );
        }

        return table.Strips;
    }
}
