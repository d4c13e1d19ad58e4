using Traceability.Domain.Stages.InsulationTest;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>C (insulation).</summary>
internal static class InsulationCases
{
    public static object? Compute(ExpectedValue v) =>
        (v.Formula, v.Name) switch
        {
            ("C1", _) => InsulationResistance.FromVoltageAndCurrent(v["V"], v["I"]).Ohm,
            ("C2", _) => InsulationRatios.LateOverEarly(Read(v, "I30"), Read(v, "I60")),
            ("C3", _) => InsulationRatios.LateOverEarly(Read(v, "I60"), Read(v, "I600")),
            ("C5", _) => Read(v, "I").WithoutSeries(v["Rs"]).Ohm,
            ("C6", "verdict") => Check(v).Passes ? "pass" : "fail",
            ("C6", _) => Check(v).RelativeError,
            ("C7", _) => new InsulationResistance(v["R_meas"], false).WithoutFixture(v["R_fixture"]).Ohm,
            ("C8", _) => DischargeMethod.ResistanceOhm(v["C_F"], v["t_s"], v["V0"], v["V"]),
            _ => null,
        };

    private static InsulationResistance Read(ExpectedValue v, string current) =>
        InsulationResistance.FromVoltageAndCurrent(v["V"], v[current]);

    private static ReferenceResistorCheck Check(ExpectedValue v) => ReferenceResistorCheck.Of(v["R_ref"], v["R_meas"], v["limit"]);
}
