namespace Traceability.SeedScenario.History;

/// <summary>Boards looked at and units assembled, tested, certified and sent out.</summary>
internal sealed class UnitWork(Bench bench, ScenarioCalendar calendar, StepCounter steps)
{
    public async Task BoardsAsync(int week, IReadOnlyList<BoardSet> boards, CancellationToken cancellation) =>
        await Task.WhenAll(boards.Select((b, i) => CheckAsync(b, calendar.At(week, 1, 8 * 60 + 6 * i), cancellation)));

    public async Task RunAsync(int week, IReadOnlyList<Unit> units, CancellationToken cancellation) =>
        await Task.WhenAll(
            units
                .Where(u => u.Capsule is null or { Scrapped: false, Stopped: false })
                .Select((u, i) => BuildAsync(u, week, i, cancellation))
        );

    private async Task CheckAsync(BoardSet b, DateTimeOffset at, CancellationToken cancellation)
    {
        await bench.RegisterAsync(b, at, cancellation);
        await bench.DoAsync(b, "receipt", at.AddMinutes(5), cancellation);
        var outcome = await bench.DoAsync(
            b,
            "incoming-check",
            at.AddMinutes(90),
            cancellation,
            new() { Values = UnitValues.OnBoard(b), Fails = b.Faulty }
        );
        if (b.Faulty && b.Last is null)
        {
            await bench.DecideAsync(
                outcome!,
                "scrap",
                "a shorted part on the power board; goes back to the supplier",
                at.AddMinutes(120),
                cancellation
            );
            b.Scrapped = true;
        }

        steps.Step("boards");
    }

    private async Task BuildAsync(Unit u, int week, int place, CancellationToken cancellation)
    {
        var day = Math.Max(u.Capsule?.ReadyDay ?? 1, 2);
        var at = calendar.At(week, day, 7.5 * 60 + 35 * place);
        await bench.RegisterAsync(u, at, cancellation);
        await bench.DoAsync(
            u,
            "boards-spacers",
            at.AddMinutes(2),
            cancellation,
            new() { Children = new Dictionary<string, string> { ["board-set"] = u.Boards.Serial } }
        );
        await bench.DoAsync(u, "connectors-wiring", at.AddMinutes(20), cancellation);
        await bench.DoAsync(u, "switches-inner", at.AddMinutes(40), cancellation);
        await bench.DoAsync(u, "body", at.AddMinutes(55), cancellation);
        await bench.DoAsync(
            u,
            "capsule-in",
            at.AddMinutes(75),
            cancellation,
            new() { Children = new Dictionary<string, string> { ["capsule"] = u.Capsule?.Serial ?? "" } }
        );
        await FinishAsync(u, at.AddMinutes(95), cancellation);
        if (u.Complete && u.End != UnitEnd.Finished)
        {
            await bench.CertifyAsync(u, calendar.At(week, day, 15 * 60 + 2 * place), cancellation);
        }

        if (u.Complete && u.End == UnitEnd.Shipped)
        {
            await bench.ShipAsync(u, calendar.At(week, CapsuleWork.NextWorkday(day), 10 * 60 + 5 * place), cancellation);
        }

        steps.Step("units");
    }

    /// <summary>From the grille to the final inspection; also what a repaired unit goes through again.</summary>
    public async Task FinishAsync(Unit u, DateTimeOffset at, CancellationToken cancellation, bool again = false)
    {
        await bench.DoAsync(u, "grille-plate", at, cancellation, new() { SlotsAreFilled = again });
        await bench.DoAsync(u, "functional-check", at.AddMinutes(15), cancellation, new() { Values = UnitValues.OnPhantom(u, again) });
        await bench.DoAsync(
            u,
            "final-acoustic",
            at.AddMinutes(30),
            cancellation,
            new() { Responses = Responses(u, again), Values = UnitValues.Levels(u, again) }
        );
        var seen = await bench.DoAsync(
            u,
            "final-inspection",
            at.AddMinutes(55),
            cancellation,
            u.MarkOnBody
                ? new()
                {
                    Values = new Dictionary<string, decimal> { ["surfaceFaults"] = 1 },
                    Fails = true,
                }
                : null
        );
        if (seen is { Passed: false })
        {
            await bench.DecideAsync(
                seen,
                "concession",
                "one mark under 1 mm on the back of the body; does not touch the function",
                at.AddMinutes(80),
                cancellation,
                "one mark under 1 mm on the back of the body"
            );
        }
    }

    private static Dictionary<string, string> Responses(Unit u, bool again)
    {
        var occasion = again ? "again " : "";
        return new()
        {
            ["omni"] = Response.Csv(new($"{occasion}omni {u.Serial}"), -39.2, 2.6, 0.8, 4),
            ["cardioid"] = Response.Csv(new($"{occasion}cardioid {u.Serial}"), -38.2, 2.2, 1.3, 4.5),
            ["eight"] = Response.Csv(new($"{occasion}eight {u.Serial}"), -40.1, 1.6, 2.2, 5),
        };
    }
}
