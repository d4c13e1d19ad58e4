using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.AcousticTest.Findings;

/// <summary>What one part of an acoustic judgement came to.</summary>
/// <param name="Values">Values computed; a null one could not be.</param>
/// <param name="Findings">What was found beside them.</param>
/// <param name="Refusal">Why nothing at all can be judged, in words; null when something can.</param>
internal sealed record AcousticPart(IReadOnlyList<ComputedValue?> Values, IReadOnlyList<StageFinding> Findings, string? Refusal = null)
{
    public static readonly AcousticPart Nothing = new([], []);

    public static AcousticPart Of(params IReadOnlyList<ComputedValue?> values) => new(values, []);

    public static AcousticPart Refused(string why) => new([], [], why);

    public static AcousticPart Note(string text) => new([], [new(text, false)]);
}
