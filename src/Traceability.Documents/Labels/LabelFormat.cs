namespace Traceability.Documents.Labels;

/// <summary>How labels share an A4 sheet. Sheets are cut along the hairlines, so no bought sheet with a fixed grid is needed.</summary>
/// <param name="Columns">Labels in a row.</param>
/// <param name="Rows">Rows on a page.</param>
/// <param name="DataMatrix">Data Matrix in place of QR: it stays readable when smaller.</param>
public sealed record LabelFormat(int Columns, int Rows, bool DataMatrix = false)
{
    /// <summary>About 46 x 25 mm: a part's tray or bag.</summary>
    public static LabelFormat Part { get; } = new(4, 11, DataMatrix: true);

    /// <summary>About 62 x 34 mm: lots, carriers, instruments.</summary>
    public static LabelFormat Lot { get; } = new(3, 8);

    /// <summary>About 93 x 55 mm: badges.</summary>
    public static LabelFormat Badge { get; } = new(2, 5);

    /// <summary>About 93 x 69 mm: stations, read from a step away.</summary>
    public static LabelFormat Station { get; } = new(2, 4);
}
