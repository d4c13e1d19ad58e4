using System.Globalization;
using Traceability.Domain.Routes;
using static System.FormattableString;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// Capacitance of front and rear against their limits, and how unlike they are:
/// asymmetry = 100 |C_front - C_rear| / ((C_front + C_rear) / 2), in percent. A bad stack shows here first (common practice, no source).
/// </summary>
public sealed class CapacitancePerSide : StageMethod
{
    private const string Front = "capacitanceFrontPf";
    private const string Rear = "capacitanceRearPf";
    private const string Asymmetry = "asymmetryPct";

    /// <inheritdoc/>
    public override string Name => "capacitance";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) => [.. NeedsEntered(stage, Front, Rear), .. NeedsComputed(stage, Asymmetry)];

    /// <inheritdoc/>
    public override StageOutcome Judge(StageInput input)
    {
        var (front, rear) = (input.Entered[Front], input.Entered[Rear]);
        var mean = (front + rear) / 2;
        if (mean <= 0)
        {
            return StageOutcome.CannotJudge(Invariant($"Capacitances of {front} pF and {rear} pF cannot be: a capacitance is above zero."));
        }

        var asymmetry = Math.Round(100 * Math.Abs(front - rear) / mean, 2);
        return new([new(Asymmetry, asymmetry, asymmetry.ToString("0.00", CultureInfo.InvariantCulture), null)], []);
    }
}
