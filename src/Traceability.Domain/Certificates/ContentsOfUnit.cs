using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Certificates;

/// <summary>What is inside a unit, as the rows of its certificate.</summary>
internal static class ContentsOfUnit
{
    public static IReadOnlyList<ContentRow> Rows(CertificateFacts facts) => [.. Below(facts.Unit, 0, facts)];

    private static IEnumerable<ContentRow> Below(Dossier parent, int depth, CertificateFacts facts)
    {
        foreach (var (label, fitting) in CertificateFacts.FittedIn(parent))
        {
            if (fitting.LotId is { } lotId)
            {
                yield return RowOf(facts.Lots[lotId], label, depth);
                continue;
            }

            var child = facts.Inside[fitting.ChildId!.Value];
            yield return new(depth, label, PlainWords.OfCode(child.Part.Kind), child.Part.Serial, child.Part.Model);
            foreach (var row in Below(child, depth + 1, facts))
            {
                yield return row;
            }
        }
    }

    private static ContentRow RowOf(Lot lot, string label, int depth) =>
        new(
            depth,
            label,
            CertificateTexts.LotOfKind(PlainWords.OfCode(lot.Kind)),
            lot.Number,
            null,
            lot.Supplier,
            lot.SupplierLot,
            lot.FilmBaseThicknessUm is { } um
                ? new(lot.Number, lot.Supplier, lot.SupplierLot, um, lot.FilmMetalThicknessNm, lot.FilmSheetResistanceOhm)
                : null
        );
}
