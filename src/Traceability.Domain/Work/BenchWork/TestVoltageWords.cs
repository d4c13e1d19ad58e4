using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.InsulationTest;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>
/// What somebody reads before connecting a capsule to a tester: between what each voltage is put, and the highest that this capsule may
/// have.
/// </summary>
public static class TestVoltageWords
{
    /// <summary>One sentence for each connection of the stage; none where the route states none.</summary>
    public static IReadOnlyList<string> Of(Stage stage, Dossier dossier) =>
        [.. TestTerminalRules.InWords(stage, PermittedVoltage.At(stage, name => dossier.CountingReading(name)?.Value))];
}
