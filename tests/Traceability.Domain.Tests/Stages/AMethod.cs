using System.Text;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages;

/// <summary>A stage for the tests of methods, and one judgement of it.</summary>
internal sealed record AMethod(Stage Stage)
{
    public static readonly DateTimeOffset Opened = new(2031, 3, 4, 8, 0, 0, TimeSpan.Zero);

    private readonly List<EvidenceFile> files = [];
    private readonly Dictionary<string, decimal> entered = [];

    public static AMethod Named(string method) => new(new Stage("stage", "Stage", method));

    public IReadOnlyDictionary<string, decimal> Constants { get; init; } = new Dictionary<string, decimal>();

    public IReadOnlyDictionary<string, decimal> Before { get; init; } = new Dictionary<string, decimal>();

    public IReadOnlyDictionary<string, FittedThing> Inside { get; init; } = new Dictionary<string, FittedThing>();

    public AMethod Reads(params string[] names) => ReadsIn("dB", names);

    public AMethod ReadsIn(string unit, params string[] names) =>
        Having(names.Select(n => new Characteristic(n, n, unit, null, null, null, null, true, false)));

    public AMethod MayRead(params string[] names) =>
        Having(names.Select(n => new Characteristic(n, n, "dB", null, null, null, null, true, false, false)));

    public AMethod Computes(params string[] names) =>
        Having(names.Select(n => new Characteristic(n, n, "dB", null, null, null, null, false, false)));

    public AMethod MayCompute(params string[] names) =>
        Having(names.Select(n => new Characteristic(n, n, "dB", null, null, null, null, false, false, false)));

    public AMethod Having(params IEnumerable<Characteristic> characteristics) =>
        this with
        {
            Stage = Stage with { Characteristics = [.. Stage.Characteristics, .. characteristics] },
        };

    public AMethod Files(string kind, params string[] names) =>
        this with
        {
            Stage = Stage with { Evidence = [.. Stage.Evidence, .. names.Select(n => new EvidenceNeed(n, kind, true))] },
        };

    public AMethod With(StageParameters parameters) => this with { Stage = Stage with { Parameters = parameters } };

    public AMethod Numbers(params (string Name, decimal Value)[] numbers) =>
        With(Stage.Parameters with { Numbers = numbers.ToDictionary(n => n.Name, n => n.Value) });

    public AMethod Enter(string name, decimal value)
    {
        entered[name] = value;
        return this;
    }

    public AMethod File(string name, string kind, string text) => File(name, kind, Encoding.UTF8.GetBytes(text));

    public AMethod File(string name, string kind, byte[] bytes, decimal? fullScaleV = null)
    {
        files.Add(new(Guid.NewGuid(), name, kind, bytes, fullScaleV));
        return this;
    }

    public IReadOnlyList<string> Problems => [.. StageMethods.Get(Stage.Method).ProblemsWith(Stage)];

    public StageOutcome Judge() =>
        StageMethods
            .Get(Stage.Method)
            .Judge(
                new(Stage, entered, files, Opened, Opened.AddHours(8), n => Before.TryGetValue(n, out var v) ? v : null)
                {
                    Inside = Inside,
                    Instruments = [new("TST-1", "tester", Constants)],
                }
            );
}

/// <summary>What a test looks for in an outcome.</summary>
internal static class Outcomes
{
    public static decimal Value(this StageOutcome outcome, string name) =>
        Assert.Single(outcome.Computed, c => c.Characteristic == name).Value;

    public static bool Fails(this StageOutcome outcome) => outcome.Findings.Any(f => f.Fails);

    public static void Says(this StageOutcome outcome, string words) =>
        Assert.Contains(outcome.Findings, f => f.Text.Contains(words, StringComparison.Ordinal));
}
