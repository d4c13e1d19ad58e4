using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>Stages of invented parts as the station is told them, and lines walked one by one.</summary>
internal static class BenchStages
{
    public static readonly StageNeeds Stack = new("C26-00001", "stack", "Clean and stack", GateSign.Open, "Open.")
    {
        Slots =
        [
            new("front-diaphragm", "Front diaphragm", null, "diaphragm"),
            new("rear-diaphragm", "Rear diaphragm", null, "diaphragm"),
            new("spacer", "Spacer ring", "spacer", null),
            new("fabric", "Resistive fabric", "fabric", null, IsRequired: false),
        ],
    };

    public static readonly StageNeeds Tune = new("D26-00017", "tune", "Fine tune", GateSign.Open, "Open.")
    {
        InstrumentKinds = ["resonance-bench", "caliper"],
        Characteristics =
        [
            new("resonanceHz", "Resonance", "Hz", 880m, 920m),
            new("spreadHz", "Spread over the film", "Hz", null, 15m),
            new("roomTemperatureC", "Room temperature", "degC", null, null),
        ],
    };

    public static StageNeeds Cure(string serial) =>
        new(serial, "cure", "Cure on the plate", GateSign.Open, "Open.") { MayRunAsLoad = true };

    public static StageNeeds Bond(string serial) => new(serial, "bond", "Bond the ring", GateSign.Open, "Open.");

    public static string B(CodeKind kind, string id) => PrintedCode.For(kind, id).Text;

    public static void Walk(WalkThrough bench, params (string Typed, Severity Severity, string Says)[] lines)
    {
        foreach (var (typed, severity, says) in lines)
        {
            var prompt = bench.Type(typed);
            Assert.True(
                prompt.Severity == severity && prompt.Line.Contains(says, StringComparison.Ordinal),
                $"\"{typed}\" was answered {prompt.Severity}: {prompt.Line} ({prompt.Detail}); expected {severity}: {says}"
            );
        }
    }
}
