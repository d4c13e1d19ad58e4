using System.Globalization;
using Traceability.Domain.Routes;
using static System.FormattableString;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// Insulation resistances against their limits, and the ratio of the reading at 60 s to that at 15 s: a ratio below one means that the
/// reading fell while the voltage stayed on, a sign of moisture or contamination (common practice, no source).
/// </summary>
public sealed class InsulationValues : StageMethod
{
    /// <summary>Far above any ratio ever seen (common practice, no source); beyond it the unit was mistaken, and the quotient may be too large for a decimal.</summary>
    private const decimal HighestBelievedRatio = 1e6m;

    private const string At15S = "insulationAt15sGohm";
    private const string At60S = "insulationAt60sGohm";
    private const string Ratio = "insulationRatio";

    /// <inheritdoc/>
    public override string Name => "insulation";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) => [.. NeedsEntered(stage, At15S, At60S), .. NeedsComputed(stage, Ratio)];

    /// <inheritdoc/>
    public override StageOutcome Judge(StageInput input)
    {
        if (input.Entered[At15S] <= 0 || input.Entered[At60S] <= 0)
        {
            return StageOutcome.CannotJudge(Invariant($"Insulation readings of {input.Entered[At15S]} and {input.Entered[At60S]} GOhm cannot be: a resistance is above zero."));
        }

        if (input.Entered[At60S] > HighestBelievedRatio * input.Entered[At15S])
        {
            return StageOutcome.CannotJudge(Invariant($"Insulation readings of {input.Entered[At15S]} and {input.Entered[At60S]} GOhm cannot belong together: check the unit."));
        }

        var ratio = Math.Round(input.Entered[At60S] / input.Entered[At15S], 3);
        StageFinding[] findings = ratio < 1
            ? [new(Invariant($"the reading fell from {input.Entered[At15S]} to {input.Entered[At60S]} GOhm while the voltage stayed on: look for moisture or contamination"), false)]
            : [];
        return new([new(Ratio, ratio, ratio.ToString("0.000", CultureInfo.InvariantCulture), null)], findings);
    }
}
