namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>How tensions are computed, in the words that the jig and the ring share.</summary>
internal static class TensionWords
{
    public const string Tension =
        "T = (2 pi a f / 2.4048)² (sigma + G rho a): f the resonance, a the radius, sigma the film's mass per area from its lot, rho"
        + " the air's density from temperature, humidity and pressure, G the coefficient of the air that moves along (the bench's"
        + " calibration, or half-way between open and baffled). Sources: Rayleigh, Theory of Sound I; Lamb 1920 for the air.";

    public const string Stress =
        "T / h, h the thickness of the base film: the metal carries next to nothing. Source: definition of stress.";

    public const string Strain =
        "(1 - nu) T / (E h) in percent: nu 0.38 and E 4.5 GPa of PET (from memory) unless the route says otherwise; elastic film,"
        + " stretched alike in all directions. Source: Hooke's law in a plane, Timoshenko, Theory of Elasticity, from memory.";

    public const string Uncertainty =
        "expanded uncertainty of the tension, k = 2, by propagation of the relative uncertainties of resonance, radius, mass per area,"
        + " air load and air density. Source: JCGM 100 (GUM), 5.1.";
}
