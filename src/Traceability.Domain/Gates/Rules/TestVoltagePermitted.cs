using Traceability.Domain.Stages;
using Traceability.Domain.Stages.InsulationTest;

namespace Traceability.Domain.Gates.Rules;

/// <summary>
/// No voltage is put across the gap of a capsule that would pull its film onto the backplate. Asked before anybody connects: the lowest
/// voltage that the route allows must be permitted for this very capsule, and the answer says the highest that is.
/// </summary>
public static class TestVoltagePermitted
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "test-voltage";

    /// <summary>
    /// Compares the route's lowest voltage with the pull-in voltage of this capsule; says nothing where no voltage stands across a gap.
    /// </summary>
    public static GateCheck? Check(GateQuestion q)
    {
        var voltages = PermittedVoltage.AcrossTheGap(q.Stage, StageMethods.TestWithVoltage(q.Stage));
        if (voltages.Count == 0)
        {
            return null;
        }

        var permitted = PermittedVoltage.At(q.Stage, name => q.Dossier.CountingReading(name)?.Value);
        if (permitted.Volts is null)
        {
            return new(Rule, false, permitted.InWords, MeasureTheCapsuleFirst);
        }

        // The highest of the lowest: each of them must be reachable.
        var lowest = voltages.Select(v => q.Stage.Characteristic(v)?.Lower ?? 0).Max();
        return permitted.ProblemWith(lowest) is { } problem
            ? new(Rule, false, problem, QualityLeadDecidesOnTheTestVoltage)
            : new(Rule, true, permitted.InWords);
    }

    private static string MeasureTheCapsuleFirst => GateTexts.Words.Say();

    private static string QualityLeadDecidesOnTheTestVoltage => GateTexts.Words.Say();
}
