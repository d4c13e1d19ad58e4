namespace Traceability.SeedScenario.History;

/// <summary>
/// A week's capsules: stacked on Tuesday, soaked and tested for insulation on Wednesday, heard on Thursday; those that fail come round
/// again.
/// </summary>
internal sealed class CapsuleWork(Bench bench, ScenarioCalendar calendar, StepCounter steps)
{
    private const int LastSoakDay = 4;

    public async Task RunAsync(int week, IReadOnlyList<Capsule> capsules, CancellationToken cancellation)
    {
        await Task.WhenAll(capsules.Select((c, i) => StackAsync(c, calendar.At(week, 1, 11 * 60 + 20 * i), cancellation)));
        for (var day = 2; day <= LastSoakDay; day++)
        {
            var group = capsules.Where(c => c.SoakDay == day && bench.Takes(c, "soak-warm")).ToList();
            await SoakAsync(week, day, group, cancellation);
            var tested = group.Where(c => c.LeftIn != "soak-humid" && bench.Takes(c, "insulation")).ToList();
            await Task.WhenAll(tested.Select((c, i) => TestInsulationAsync(c, calendar.At(week, day, 13 * 60 + 50 + 7 * i), cancellation)));
            var dry = tested.Where(c => c.SoakDay == day && bench.Takes(c, "warm-drying")).ToList();
            await DryAsync(week, day, dry, cancellation);
            var next = NextWorkday(day);
            await Task.WhenAll(
                dry.Where(c => c.LeftIn is null)
                    .Select((c, i) => ListenAsync(c, next, calendar.At(week, next, 8.5 * 60 + 15 * i), cancellation))
            );
        }
    }

    public static int NextWorkday(int day) => day % 7 == 4 ? day + 3 : day + 1;

    private async Task StackAsync(Capsule c, DateTimeOffset at, CancellationToken cancellation)
    {
        await bench.RegisterAsync(c, at, cancellation);
        await bench.DoAsync(
            c,
            "clean-stack",
            at,
            cancellation,
            new() { Children = c.Diaphragms.Select((d, i) => (Position(c, i), d.Serial)).ToDictionary() }
        );
        await ToCapacitanceAsync(c, at, cancellation);
        if (c.Story.CrookedStack)
        {
            await RestackAsync(c, at.AddMinutes(60), "stacked anew, spacer seated", cancellation);
        }

        steps.Step("capsules");
    }

    private static string Position(Capsule c, int i) =>
        c.Diaphragms.Count == 1 ? "diaphragm"
        : i == 0 ? "front-diaphragm"
        : "rear-diaphragm";

    private async Task RestackAsync(Capsule c, DateTimeOffset at, string note, CancellationToken cancellation)
    {
        c.PutRight = true;
        await bench.DoAsync(c, "clean-stack", at, cancellation, new() { SlotsAreFilled = true, Note = note });
        await ToCapacitanceAsync(c, at, cancellation);
    }

    private async Task ToCapacitanceAsync(Capsule c, DateTimeOffset at, CancellationToken cancellation)
    {
        var again = c.PutRight;
        var torque = await bench.DoAsync(c, "press-fasten", at.AddMinutes(15), cancellation, CapsuleValues.Fastening(c));
        if (torque is { Passed: false })
        {
            await bench.CorrectAsync(
                torque,
                "screwTorqueNcm",
                3.0m,
                "typed 30 for 3.0; the driver's own counter says 3.0",
                at.AddMinutes(18),
                cancellation
            );
        }

        await bench.DoAsync(c, "leads", at.AddMinutes(25), cancellation, new() { SlotsAreFilled = again });
        var measured = await bench.DoAsync(c, "capacitance", at.AddMinutes(40), cancellation, CapsuleValues.Capacitance(c));
        if (measured is { Passed: false })
        {
            await bench.DecideAsync(
                measured,
                "rework",
                "front and rear differ too much: one spacer does not lie flat",
                at.AddMinutes(50),
                cancellation
            );
        }
        else if (c.Story.MistypedCapacitance && measured is not null)
        {
            await bench.CorrectAsync(
                measured,
                "capacitancePf",
                CapsuleValues.FrontPf(c),
                "figures swapped when typed; the printed strip shows this value",
                at.AddMinutes(45),
                cancellation
            );
        }
    }

    private async Task SoakAsync(int week, int day, IReadOnlyList<Capsule> group, CancellationToken cancellation)
    {
        await bench.LoadAsync("soak-warm", group, calendar.At(week, day, 7 * 60), calendar.At(week, day, 8 * 60 + 40), cancellation);
        await bench.LoadAsync("soak-cold", group, calendar.At(week, day, 8 * 60 + 50), calendar.At(week, day, 10 * 60 + 50), cancellation);
        foreach (var load in group.GroupBy(c => c.LeftIn == "soak-humid"))
        {
            await bench.LoadAsync(
                "soak-humid",
                [.. load],
                calendar.At(week, day, 11 * 60),
                load.Key ? null : calendar.At(week, day, 13 * 60 + 45),
                cancellation
            );
        }
    }

    private async Task TestInsulationAsync(Capsule c, DateTimeOffset at, CancellationToken cancellation)
    {
        var tested = await bench.DoAsync(c, "insulation", at, cancellation, CapsuleValues.Insulation(c));
        if (tested is not { Passed: false })
        {
            return;
        }

        c.InsulationFailed++;
        if (c.InsulationFailed == 3)
        {
            await bench.DecideAsync(
                tested,
                "scrap",
                "two cleanings did not help; diaphragms and stack not to be used again",
                at.AddMinutes(30),
                cancellation
            );
            c.Scrapped = true;
        }
        else if (!c.Story.WaitsForDecision)
        {
            c.SoakDay++;
            await bench.DecideAsync(
                tested,
                "rework",
                $"clean with a solvent wipe and soak again (cleaning {c.InsulationFailed})",
                at.AddMinutes(30),
                cancellation
            );
        }
    }

    private async Task DryAsync(int week, int day, IReadOnlyList<Capsule> dry, CancellationToken cancellation)
    {
        foreach (var load in dry.GroupBy(c => c.LeftIn == "warm-drying"))
        {
            await bench.LoadAsync(
                "warm-drying",
                [.. load],
                calendar.At(week, day, 15.5 * 60),
                load.Key ? null : calendar.At(week, day, 17 * 60 + 45),
                cancellation
            );
        }
    }

    private async Task ListenAsync(Capsule c, int day, DateTimeOffset at, CancellationToken cancellation)
    {
        var heard = await bench.DoAsync(c, "acoustic", at, cancellation, CapsuleValues.Acoustic(c));
        if (heard is { Passed: false })
        {
            await bench.DecideAsync(heard, "rework", "a dip at 3 kHz: the resistive fabric is creased", at.AddMinutes(20), cancellation);
            await RestackAsync(c, at.AddMinutes(120), "fabric laid anew", cancellation);
            c.SoakDay = day + 1;
            return;
        }

        c.ReadyDay = NextWorkday(day);
    }
}
