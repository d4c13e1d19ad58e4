using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>One side of a capsule in the words of a route: names of its characteristics, and the position of its diaphragm.</summary>
/// <param name="Suffix">"", "Front" or "Rear", as it stands in the names.</param>
/// <param name="Position">Where the diaphragm is fitted.</param>
internal sealed record CapsuleSide(string Suffix, string Position)
{
    public const string Tension = "ringTensionNm";
    public const string Resonance = "ringResonanceHz";

    public string Capacitance => $"capacitance{Suffix}Pf";

    public string Gap => $"gap{Suffix}Um";

    public string Margin => $"pullInMargin{Suffix}";

    private string PullInName => $"pullIn{Suffix}V";

    private string UnderVoltage => $"polarisedResonance{Suffix}Hz";

    private string Corner => $"lowCorner{Suffix}Hz";

    public static string? HowComputed(string characteristic) =>
        characteristic switch
        {
            _ when characteristic.StartsWith("gap", StringComparison.Ordinal) =>
                "eps0 A / (C - C stray): A the electrode's effective area (ring radius, less what is drilled away), C stray that of"
                    + " leads and fixture. Source: parallel-plate capacitor; fringe field left out.",
            _ when characteristic.StartsWith("pullInMargin", StringComparison.Ordinal) =>
                "pull-in voltage over polarising voltage: a safety figure of the design. 1.25 leaves the voltage at 80 % of pull-in"
                    + " (common practice, no source).",
            _ when characteristic.StartsWith("pullIn", StringComparison.Ordinal) =>
                "1.2564 sqrt(T d³ / (eps0 a²)): T the diaphragm's tension on its ring, d the gap, a the radius. Exact for a membrane"
                    + " clamped at its edge before a full flat electrode, not for one fixed at its centre; the holes of a drilled"
                    + " electrode are left out, which is on the safe side. Source: Pelesko and Bernstein, Modeling MEMS and NEMS (from"
                    + " memory).",
            _ when characteristic.StartsWith("polarisedResonance", StringComparison.Ordinal) =>
                "the resonance on the ring times f/f0 of the membrane about its resting place under the polarising voltage (exact"
                    + " membrane, edge-clamped): the field takes stiffness away. Source: from the membrane equation with the pull of"
                    + " the field; Pelesko and Bernstein, Modeling MEMS and NEMS, from memory.",
            _ when characteristic.StartsWith("lowCorner", StringComparison.Ordinal) =>
                "1 / (2 pi R C), R the bias resistor (route number biasResistorGohm), C the measured capacitance. Source: first-order"
                    + " high-pass.",
            _ => null,
        };

    /// <summary>The numbers that the route must state for what it asks of this side.</summary>
    public IEnumerable<string> NumbersFor(Stage stage)
    {
        bool Asks(string name) => stage.Characteristic(name) is { Entered: false };
        string[] voltage = Asks(Margin) || Asks(UnderVoltage) ? ["polarisingVoltageV"] : [];
        string[] gap = voltage.Length > 0 || Asks(Gap) || Asks(PullInName) ? ["ringRadiusMm", "effectiveAreaPct"] : [];
        string[] bias = Asks(Corner) ? ["biasResistorGohm"] : [];
        return [.. gap, .. voltage, .. bias];
    }

    /// <summary>What the diaphragm on this side should have on record and has not, in words; null when nothing lacks.</summary>
    public string? LacksOnRecord(StageInput input) =>
        (Of(input, Tension), Of(input, Resonance)) switch
        {
            (not > 0, _) => CapsuleTexts.DiaphragmHasNoTensionOnRecord(In),
            (_, null) => CapsuleTexts.DiaphragmHasNoResonanceOnRecord(In),
            _ => null,
        };

    /// <summary>A value of the diaphragm on this side, or null.</summary>
    public decimal? Of(StageInput input, string characteristic) =>
        input.Inside.GetValueOrDefault(Position) is FittedPart diaphragm && diaphragm.Values.TryGetValue(characteristic, out var value)
            ? value
            : null;

    public IEnumerable<ComputedValue?> Values(StageInput input)
    {
        var picofarads = (double)input.Entered[Capacitance];
        if (input.Number("biasResistorGohm") is { } bias and > 0)
        {
            yield return ComputedValue.Of(Corner, LowCorner.CornerHz((double)bias * 1e9, picofarads * 1e-12), 2);
        }

        if (GapM(input) is not { } gap)
        {
            yield break;
        }

        yield return ComputedValue.Of(Gap, gap * 1e6, 1);
        if (PolarisedBy(input, gap) is { } side)
        {
            var pullIn = PullIn.VoltageV(side.RadiusM, side.GapM, side.TensionNPerM);
            yield return ComputedValue.Of(PullInName, pullIn, 1);
            yield return side.VoltageV > 0 ? ComputedValue.Of(Margin, pullIn / side.VoltageV, 2) : null;
            yield return Of(input, Resonance) is { } onRing
                ? ComputedValue.Of(UnderVoltage, (double)onRing * SpringSoftening.ExactRatio(side), 0)
                : null;
        }
    }

    public IEnumerable<StageFinding> Findings(StageInput input)
    {
        if (GapM(input) is not { } gap || input.Number("polarisingVoltageV") is not > 0)
        {
            yield break;
        }

        if (PolarisedBy(input, gap) is not { } side)
        {
            yield return new(CapsuleTexts.PullInVoltageIsNotStated(In), false);
            yield break;
        }

        var share = PullIn.ShareInUse(side);
        if (share >= 1)
        {
            yield return new(CapsuleTexts.FilmWouldFall(side.VoltageV, In), true);
        }
        else if (share > PullIn.UsualShare)
        {
            yield return new(CapsuleTexts.ShareOfPullInVoltage(side.VoltageV, 100 * share, In, 100 * PullIn.UsualShare), false);
        }
    }

    private string In =>
        Suffix switch
        {
            "" => "",
            "Front" => CapsuleTexts.OfTheFront,
            _ => CapsuleTexts.OfTheRear,
        };

    private double? GapM(StageInput input)
    {
        if (
            input.Number("ringRadiusMm") is not { } radiusMm
            || radiusMm <= 0
            || input.Number("effectiveAreaPct") is not { } sharePct
            || sharePct <= 0
        )
        {
            return null;
        }

        var area = Math.PI * Math.Pow((double)radiusMm * 1e-3, 2) * (double)sharePct / 100;
        return CapsuleCapacitance.GapM(
            (double)input.Entered[Capacitance] * 1e-12,
            (double)(input.Constant("strayCapacitancePf") ?? 0) * 1e-12,
            area
        );
    }

    private PolarisedSide? PolarisedBy(StageInput input, double gapM) =>
        Of(input, Tension) is { } tension and > 0
            ? new((double)(input.Number("polarisingVoltageV") ?? 0), (double)input.Number("ringRadiusMm")! * 1e-3, gapM, (double)tension)
            : null;
}
