namespace Traceability.Domain.Stages.FilmLot;

/// <summary>One layer of a metallised film.</summary>
/// <param name="ThicknessM">h, m.</param>
/// <param name="DensityKgPerM3">rho, kg/m3.</param>
public readonly record struct FilmLayer(double ThicknessM, double DensityKgPerM3);

/// <summary>
/// Bulk properties of the usual layers, from memory (CRC Handbook of Chemistry and Physics for the metals). The lot's own data win.
/// </summary>
public static class FilmMaterials
{
    /// <summary>Biaxially oriented PET, kg/m3.</summary>
    public const double PetKgPerM3 = 1390;

    /// <summary>Gold, kg/m3.</summary>
    public const double GoldKgPerM3 = 19_300;

    /// <summary>Aluminium, kg/m3.</summary>
    public const double AluminiumKgPerM3 = 2700;

    /// <summary>Chromium, kg/m3.</summary>
    public const double ChromiumKgPerM3 = 7190;

    /// <summary>Nickel, kg/m3.</summary>
    public const double NickelKgPerM3 = 8908;

    /// <summary>Resistivity of bulk gold at 20 °C, ohm metre.</summary>
    public const double GoldOhmM = 2.214e-8;

    /// <summary>Resistivity of bulk aluminium at 20 °C, ohm metre.</summary>
    public const double AluminiumOhmM = 2.65e-8;
}
