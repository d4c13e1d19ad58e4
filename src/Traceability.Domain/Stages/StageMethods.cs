using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages;

/// <summary>The methods that routes may name. To add one: write the class in its stage's folder and list it here.</summary>
public static class StageMethods
{
    private static readonly Dictionary<string, StageMethod> ByName = new StageMethod[]
    {
        new EnteredLimits(),
        new FilmLot.FilmInspection(),
        new Diaphragm.TensionInJig(),
        new Diaphragm.AdhesiveBond(),
        new Diaphragm.TimeOnPlate(),
        new Diaphragm.DriftOnRing(),
        new Capsule.CapacitancePerSide(),
        new ClimateSoak.SoakFromLog(),
        new InsulationTest.InsulationValues(),
        new InsulationTest.InsulationFromCurrent(),
        new AcousticTest.ResponseInMask(),
        new BoardSet.PhantomCheck(),
    }.ToDictionary(m => m.Name);

    /// <summary>The names that a route may use.</summary>
    public static IEnumerable<string> Names => ByName.Keys.Order();

    /// <summary>What each of them asks of a route that names it, by name.</summary>
    public static IReadOnlyDictionary<string, MethodRequirements> Requirements { get; } =
        ByName.ToDictionary(m => m.Key, m => m.Value.Requirements);

    /// <summary>The method of that name, or null.</summary>
    public static StageMethod? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>True when the method of the stage puts a test voltage on a capsule.</summary>
    public static bool TestWithVoltage(Stage stage) => Find(stage.Method) is { TestsWithVoltage: true };

    /// <summary>The method of a route that was checked when it was read.</summary>
    public static StageMethod Get(string name) => Find(name) ?? throw new InvalidOperationException($"no stage method '{name}'");
}
