using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// Electrification time: how long the test voltage was on when the last resistance or current was read. A reading taken too early still
/// holds charging current and says nothing about the insulation.
/// </summary>
/// <remarks>
/// Route number <c>electrificationSeconds</c>; entered <c>electrificationS</c>, where the route has that characteristic. Without it the
/// moments of recording are compared, and a reading that cannot have had its time is marked. Source: the definition of insulation
/// resistance at a stated time, IEC 62631-3-1, from memory. Checks: <c>InsulationMethodTests</c>.
/// </remarks>
internal static class Electrification
{
    /// <summary>The route's number.</summary>
    public const string Asked = "electrificationSeconds";

    /// <summary>The characteristic that holds the time.</summary>
    public const string Entered = "electrificationS";

    /// <summary>Why the reading is not judged; null when it may be.</summary>
    public static string? ProblemWith(StageInput input) =>
        input.Value(Entered) switch
        {
            { } seconds when seconds < 0 => InsulationTexts.TimeWithVoltageCannotBe(seconds),
            { } seconds when seconds < input.Number(Asked) => InsulationTexts.LastReadingWasTakenTooEarly(seconds, input.Number(Asked)),
            _ => null,
        };

    /// <summary>
    /// A mark on a reading that was recorded too soon after the test was begun; nothing when the time was entered, or everything was
    /// recorded in one go.
    /// </summary>
    public static IEnumerable<StageFinding> Findings(StageInput input, string lastReading)
    {
        if (
            input.Value(Entered) is null
            && input.Number(Asked) is { } asked
            && input.ReadAt.TryGetValue(lastReading, out var at)
            && (at - input.OpenedAt).TotalSeconds is > 0 and var seconds
            && seconds < (double)asked
        )
        {
            yield return new(InsulationTexts.LastReadingWasRecordedEarly(seconds, asked), false);
        }
    }
}
