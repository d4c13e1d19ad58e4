namespace Traceability.Domain.Certificates;

/// <summary>One line of "what is inside": a part or a lot at a position of its parent.</summary>
/// <param name="Depth">Distance from the unit: 0 is fitted in the unit itself, 1 in a part of it, and so on.</param>
/// <param name="Position">Position in the parent, such as "diaphragm, front".</param>
/// <param name="Kind">Kind of part or lot in words.</param>
/// <param name="Identifier">Serial of a part or number of a lot; empty where the workshop does not show the numbers of lots.</param>
/// <param name="Model">Model of a part; null for a lot.</param>
/// <param name="Supplier">Who delivered the lot; null for what was made here, and where the workshop does not show it.</param>
/// <param name="SupplierLot">The supplier's own lot number or board serial.</param>
/// <param name="Film">Set when the row is a film lot.</param>
public sealed record ContentRow(
    int Depth,
    string Position,
    string Kind,
    string Identifier,
    string? Model = null,
    string? Supplier = null,
    string? SupplierLot = null,
    FilmData? Film = null
);

/// <summary>A film lot by number, with what is known about the film.</summary>
/// <param name="LotNumber">The workshop's number of the lot; empty where it does not show it.</param>
/// <param name="Supplier">Who delivered it.</param>
/// <param name="SupplierLot">The supplier's own number.</param>
/// <param name="BaseThicknessUm">Thickness of the polymer in micrometres.</param>
/// <param name="MetalThicknessNm">Thickness of the sputtered metal in nanometres.</param>
/// <param name="SheetResistanceOhmPerSquare">Sheet resistance of the metal in ohms per square, when it was measured.</param>
public sealed record FilmData(
    string LotNumber,
    string? Supplier,
    string? SupplierLot,
    decimal BaseThicknessUm,
    decimal? MetalThicknessNm,
    decimal? SheetResistanceOhmPerSquare
);
