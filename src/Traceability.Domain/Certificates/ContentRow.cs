namespace Traceability.Domain.Certificates;

/// <summary>One line of "what is inside": a part or a lot at a position of its parent.</summary>
/// <param name="Depth" example="1">Distance from the unit: 0 is fitted in the unit itself, 1 in a part of it, and so on.</param>
/// <param name="Position" example="diaphragm, front">Position in the parent, such as "diaphragm, front".</param>
/// <param name="Kind" example="diaphragm">Kind of part or lot in words.</param>
/// <param name="Identifier" example="D-0412">Serial of a part or number of a lot; empty where numbers of lots are not shown.</param>
/// <param name="Model" example="TARN-2">Model of a part; null for a lot.</param>
/// <param name="Supplier" example="Supplier of film">Who delivered the lot; null for what was made here, and where it is not shown.</param>
/// <param name="SupplierLot" example="B-7731">The supplier's own lot number or board serial.</param>
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
/// <param name="LotNumber" example="F-2603">The workshop's number of the lot; empty where it is not shown.</param>
/// <param name="Supplier" example="Supplier of film">Who delivered it.</param>
/// <param name="SupplierLot" example="B-7731">The supplier's own number.</param>
/// <param name="BaseThicknessUm" example="6">Thickness of the polymer in micrometres.</param>
/// <param name="MetalThicknessNm" example="50">Thickness of the sputtered metal in nanometres.</param>
/// <param name="SheetResistanceOhmPerSquare" example="1.02">Sheet resistance of the metal in ohms per square, when it was measured.</param>
public sealed record FilmData(
    string LotNumber,
    string? Supplier,
    string? SupplierLot,
    decimal BaseThicknessUm,
    decimal? MetalThicknessNm,
    decimal? SheetResistanceOhmPerSquare
);
