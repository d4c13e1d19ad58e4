namespace Traceability.Domain.Certificates;

/// <summary>
/// What every certificate says about the conditions of its values. Terms follow IEC 60268-4 ("Sound system equipment -
/// Part 4: Microphones"); the sentences are our own, and the figures are from memory, not checked against the paper.
/// A model adds its own (supply, impedance, reference point) to these.
/// </summary>
public static class ReferenceStatements
{
    /// <summary>How far a certificate speaks.</summary>
    public const string Scope =
        "This certificate speaks only for what was measured, on this unit and its parts, on the dates stated. "
        + "What is not listed was not measured. It is a record of production, not a calibration certificate.";

    /// <summary>Reference conditions common to all models.</summary>
    public static IReadOnlyList<Statement> Common { get; } =
    [
        new("Reference conditions",
            "Terms and conditions after IEC 60268-4: plane progressive wave at 1 kHz and 1 Pa (0.3 Pa where stated), arriving along the "
            + "reference axis; air at 20 °C (15 °C to 35 °C), 25 % to 75 % relative humidity, 86 kPa to 106 kPa."),
        new("Sensitivity",
            "Free-field sensitivity at 1 kHz with rated supply and load, in mV/Pa; its level is relative to 1 V/Pa."),
        new("Equivalent noise",
            "Sound pressure level that would give the same output as the unit's own noise, A-weighted (IEC 61672-1), relative to 20 µPa."),
        new("Verdict",
            "A value is judged against its limits as entered, without regard to the uncertainty, by the route revision stated above."),
    ];
}
