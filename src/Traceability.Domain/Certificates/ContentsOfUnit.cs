using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work;

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
                yield return RowOf(facts.Lots[lotId], label, depth, facts.Shown);
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

    private static ContentRow RowOf(Lot lot, string label, int depth, ShownSections shown)
    {
        var (number, supplier, supplierLot) = (
            shown.LotNumbers ? lot.Number : "",
            shown.Suppliers ? lot.Supplier : null,
            shown.LotNumbers ? lot.SupplierLot : null
        );
        return new(
            depth,
            label,
            shown.LotNumbers ? CertificateTexts.LotOfKind(PlainWords.OfCode(lot.Kind)) : PlainWords.OfCode(lot.Kind),
            number,
            null,
            supplier,
            supplierLot,
            lot.FilmBaseThicknessUm is { } um
                ? new(number, supplier, supplierLot, um, lot.FilmMetalThicknessNm, lot.FilmSheetResistanceOhm)
                : null
        );
    }
}
