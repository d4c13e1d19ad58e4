namespace Traceability.Domain.Tests.Routes;

/// <summary>A good route file that uses every key there is, and what a test does to it.</summary>
internal static class ARouteFile
{
    public const string Good = """
        model: M-1
        kind: capsule
        revision: 3
        title: Dual capsule
        serialPrefix: C
        author: P1
        approvedBy: P2
        effectiveFrom: 2026-01-31
        stages:
          - code: stack
            title: Stack
            method: entered-limits
            cautions: [solvent]
            qualification: stacking
            freesCarrier: true
            slots:
              - {position: front, label: Front, partKind: diaphragm}
              - {position: rear, partKind: diaphragm}
              - {position: screws, lotKind: screws, required: false}
            match:
              positions: [front, rear]
              characteristic: resonanceHz
              maximumDifference: 12.5
            characteristics:
              - {name: torqueNcm, label: Torque, unit: Ncm, nominal: 3, lower: 2.5, upper: 3.5, resolution: 0.1, onCertificate: true}
          - code: capacitance
            title: Capacitance
            method: capacitance
            reworkReturnsTo: stack
            characteristics:
              - {name: capacitanceFrontPf, unit: pF}
              - {name: capacitanceRearPf, unit: pF}
              - {name: asymmetryPct, unit: pct, upper: 5, entered: false}
          - code: soak
            title: Soak
            method: climate-soak
            loads: true
            minimumOpenMinutes: 60
            evidence:
              - {name: log, kind: climate-log, required: true}
            characteristics:
              - {name: warmDwellMinutes, unit: min, lower: 30, entered: false}
            parameters:
              toleranceSource: workshop procedure 4
              phases:
                - {name: warm, temperatureC: 40, temperatureToleranceK: 2, humidityPct: 20, humidityTolerancePct: 5, minDwellMinutes: 30,
                    maxRampKPerMinute: 1, partTimeConstantMinutes: 4, rampWindowMinutes: 3, excursionsAreSubtracted: true,
                        mustStayDry: true, maxGapMinutes: 5}
          - code: insulation
            title: Insulation test
            method: insulation
            instrumentKinds: [insulation-tester]
            checkedToday: true
            allowedAttempts: 2
            waits:
              - {afterStage: soak, minimumMinutes: 5}
            windows:
              - {afterStage: soak, maximumMinutes: 30}
            notByBuilderOf: [stack]
            characteristics:
              - {name: testVoltageV, unit: V, lower: 40, upper: 50}
              - {name: insulationAt15sGohm, unit: GOhm}
              - {name: insulationAt60sGohm, unit: GOhm, lower: 100}
              - {name: insulationRatio, unit: ratio, entered: false}
            parameters: {numbers: {pullInFactor: 1.25}, terminals: [{voltage: testVoltageV, tied: [film], against: [backplate]}]}
          - code: acoustic
            title: Acoustic test
            method: response-in-mask
            evidence:
              - {name: front, kind: frequency-response}
            characteristics:
              - {name: frontMarginDb, unit: dB, lower: 0, entered: false}
            parameters:
              maskedEvidence: [front]
              mask:
                - {frequencyHz: 20, lowerDb: -6, upperDb: 6}
                - {frequencyHz: 20000, lowerDb: -6, upperDb: 6}
              numbers: {distanceMm: 300}

        """;

    /// <summary>The good file with one line (the one that contains <paramref name="old"/>) changed, and that line's number.</summary>
    public static (string Text, int Line) With(string old, string changed)
    {
        var at = Good.IndexOf(old, StringComparison.Ordinal);
        Assert.True(at >= 0 && Good.IndexOf(old, at + 1, StringComparison.Ordinal) < 0, $"'{old}' must be there once");
        return (Good.Replace(old, changed, StringComparison.Ordinal), Good[..at].Count(c => c == '\n') + 1);
    }
}
