namespace Traceability.SeedScenario.History;

/// <summary>A week's diaphragms: tuned and bonded on Monday, on the plate over the afternoon, measured on Tuesday.</summary>
internal sealed class DiaphragmWork(Bench bench, ScenarioCalendar calendar, StepCounter steps)
{
    public async Task RunAsync(int week, IReadOnlyList<Diaphragm> diaphragms, int firstJig, CancellationToken cancellation)
    {
        await Task.WhenAll(
            diaphragms.Select(
                (d, i) => TuneAndBondAsync(d, calendar.At(week, 0, 7.5 * 60 + 15 * i), $"JIG-{firstJig + i:00}", cancellation)
            )
        );
        foreach (var load in diaphragms.Where(d => bench.Takes(d, "cure")).GroupBy(d => d.LeftIn == "cure"))
        {
            await bench.LoadAsync(
                "cure",
                [.. load],
                calendar.At(week, 0, 14 * 60),
                load.Key ? null : calendar.At(week, 0, 18 * 60 + 20),
                cancellation
            );
        }

        await Task.WhenAll(
            diaphragms.Where(d => d.LeftIn is null).Select((d, i) => MeasureAsync(d, calendar.At(week, 1, 8 * 60 + 4 * i), cancellation))
        );
    }

    private async Task TuneAndBondAsync(Diaphragm d, DateTimeOffset at, string jig, CancellationToken cancellation)
    {
        await bench.RegisterAsync(d, at, cancellation, jig);
        await bench.DoAsync(d, "mount", at, cancellation);
        await bench.DoAsync(d, "coarse-tune", at.AddMinutes(12), cancellation);
        await bench.DoAsync(
            d,
            "fine-tune",
            at.AddMinutes(30),
            cancellation,
            new()
            {
                Values = new Dictionary<string, decimal> { ["jigResonanceHz"] = d.JigHz, ["tunePressureHpa"] = PressureHpa(d, "tuned") },
            }
        );
        await bench.DoAsync(
            d,
            "ring-bond",
            at.AddMinutes(55),
            cancellation,
            new() { Values = new Dictionary<string, decimal> { ["minutesSinceMixing"] = (decimal)Math.Round(d.Chance.Between(4, 38)) } }
        );
        steps.Step("diaphragms");
    }

    /// <summary>The weather changes little from one day to the next: the resonances of the scenario are those of about 1000 hPa.</summary>
    private static decimal PressureHpa(Diaphragm d, string when) =>
        (decimal)Math.Round(new Chance($"pressure {when} {d.Serial}").Near(1000, 3));

    private async Task MeasureAsync(Diaphragm d, DateTimeOffset at, CancellationToken cancellation)
    {
        await bench.DoAsync(d, "release-trim", at, cancellation);
        var low = d.Fate is DiaphragmFate.Slipped or DiaphragmFate.Conceded;
        var measured = await bench.DoAsync(
            d,
            "ring-resonance",
            at.AddMinutes(60),
            cancellation,
            new()
            {
                Values = new Dictionary<string, decimal>
                {
                    ["ringResonanceHz"] = d.RingHz,
                    ["ringPressureHpa"] = PressureHpa(d, "on the ring"),
                },
                Fails = low,
            }
        );
        if (low)
        {
            await DecideAsync(d, measured!, at.AddMinutes(90), cancellation);
        }
    }

    private async Task DecideAsync(Diaphragm d, Outcome failed, DateTimeOffset at, CancellationToken cancellation)
    {
        if (d.Fate == DiaphragmFate.Conceded)
        {
            await bench.DecideAsync(
                failed,
                "concession",
                "less than 2 Hz below the limit and its mate is as low; the pair matches",
                at,
                cancellation,
                "this diaphragm, in a pair that matches"
            );
            return;
        }

        await bench.DecideAsync(failed, "scrap", "far below the limit: the film slipped in the glue line", at, cancellation);
        d.Scrapped = true;
    }
}
