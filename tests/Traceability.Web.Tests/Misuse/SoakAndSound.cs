namespace Traceability.Web.Tests.Misuse;

/// <summary>A capsule that is soaked and then tested for sound, with the files that belong to it.</summary>
internal static class SoakAndSound
{
    public const string Heading = "time,temperature_c,humidity_pct\n";

    public const string Route = """
        model: BAD-1
        kind: capsule
        title: Capsule
        serialPrefix: BE
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: soak
            title: Soak
            method: climate-soak
            evidence: [{name: log, kind: climate-log}]
            characteristics:
              - {name: warmDwellMinutes, label: Dwell, unit: min, lower: 60, entered: false}
              - {name: warmExcursionMinutes, label: Longest excursion, unit: min, entered: false}
            parameters:
              toleranceSource: workshop procedure (invented)
              phases: [{name: warm, temperatureC: 40, temperatureToleranceK: 2, minDwellMinutes: 60, maxGapMinutes: 20}]
          - code: acoustic
            title: Acoustic test
            method: response-in-mask
            evidence:
              - {name: front, kind: frequency-response}
              - {name: noise, kind: noise-recording, required: false}
            characteristics:
              - {name: outputMv, label: Output, unit: mV}
              - {name: referenceOutputMv, label: Reference, unit: mV}
              - {name: sensitivityMvPa, label: Sensitivity, unit: mV/Pa, entered: false}
              - {name: frontMarginDb, label: Margin, unit: dB, lower: 0, entered: false}
              - {name: recordedNoiseDba, label: Noise, unit: dBA, upper: 20, entered: false, required: false}
              - {name: recordedCrackles, label: Crackles, unit: count, upper: 1, entered: false, required: false}
            parameters:
              mask: [{frequencyHz: 100, lowerDb: -3, upperDb: 3}, {frequencyHz: 10000, lowerDb: -3, upperDb: 3}]
              numbers: {referenceSensitivityMvPa: 50}
        """;

    public static async Task<(string Serial, Guid Attempt)> AtSoakAsync(this Workshop workshop)
    {
        await workshop.RouteOnceAsync("BAD-1", "capsule", Route);
        var serial = (await workshop.PostAsync("parts", new { kind = "capsule", model = "BAD-1" })).Expect(201).Text("serial");
        return (serial, await workshop.OpenAsync(serial, "soak"));
    }

    public static async Task NoVerdictAsync(this Workshop workshop, Guid attempt, string words, int files)
    {
        var problem = (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Problem(409);
        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.Contains("what was recorded so far is kept", problem, StringComparison.Ordinal);
        var kept = (await workshop.GetAsync($"attempts/{attempt}")).Expect(200);
        Assert.Equal(("open", files), (kept.Text("state"), kept.List("evidence").Count));
    }

    public static async Task KeepAsync(this Workshop workshop, Guid attempt, string name, HttpContent file) =>
        (await workshop.PostAsync($"attempts/{attempt}/evidence?name={name}", file)).Expect(201);

    /// <summary>Rows of "T+minutes,..." from now on.</summary>
    public static string Log(this Workshop workshop, string rows) =>
        Heading
        + string.Concat(
            rows.Split('|')
                .Select(row =>
                {
                    var fields = row.Split(',', 2);
                    var at = workshop.Clock.GetUtcNow().AddMinutes(int.Parse(fields[0][2..], null));
                    return $"{at:yyyy-MM-dd'T'HH:mm:ss'Z'},{fields[1]}\n";
                })
        );
}
