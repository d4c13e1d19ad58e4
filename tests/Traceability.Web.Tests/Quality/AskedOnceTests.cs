using Microsoft.Extensions.DependencyInjection;
using Traceability.Web.Features.Quality.Desk;

namespace Traceability.Web.Tests.Quality;

/// <summary>What concerns many things is asked of the database for all of them together, not for each.</summary>
public sealed class AskedOnceTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Boards = """
        model: ASKED-1
        kind: board-set
        title: Board set
        serialPrefix: SA
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: check
            title: Incoming check
            method: phantom-check
            slots: [{position: panel, lotKind: board-panel}]
            characteristics:
              - {name: boardNumberInLot, label: Number in the lot, unit: count}
              - {name: phantomSourceV, label: Source, unit: V}
              - {name: phantomTerminalV, label: Terminal, unit: V}
              - {name: supplyCurrentMa, label: Current, unit: mA, upper: 4}
            parameters: {numbers: {samplingQualityLimitPct: 1.0}}
        """;

    private const string ManyCharacteristics = """
        model: ASKED-2
        kind: board-set
        title: Board set
        serialPrefix: SM
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: look
            title: Electrical check
            method: entered-limits
            characteristics:
              - {name: offsetMv, label: Offset, unit: mV, upper: 5, onCertificate: true}
              - {name: noiseUv, label: Noise, unit: uV, upper: 9, onCertificate: true}
              - {name: gainDb, label: Gain, unit: dB, lower: -1, upper: 1, onCertificate: true}
        """;

    [Fact]
    public async Task The_desk_counts_the_samples_of_three_failing_lots_as_quickly_as_of_one()
    {
        await WorkshopSetUp.LotAsync(workshop, "ASK-P1", "board-panel");
        await workshop.RouteAsync(Boards);
        await FailAsync("ASK-P1");
        var (one, ofOne) = await FailedAsync();
        foreach (var panel in new[] { "ASK-P2", "ASK-P3" })
        {
            await WorkshopSetUp.LotAsync(workshop, panel, "board-panel");
            await FailAsync(panel);
        }

        var (three, ofThree) = await FailedAsync();
        Assert.Equal((1, 3), (one, three));
        Assert.Equal(ofOne, ofThree);
    }

    [Fact]
    public async Task A_month_is_reported_with_the_same_questions_however_many_characteristics_are_charted()
    {
        await ReportAsync();
        var few = await ReportAsync();
        await workshop.RouteAsync(ManyCharacteristics);
        // A route is read once, when it is first asked for.
        await ReportAsync();
        Assert.Equal(few, await ReportAsync());
    }

    [Fact]
    public async Task Four_lots_are_held_and_lifted_with_as_many_questions_as_two()
    {
        await Task.WhenAll(new[] { "ASK-A1", "ASK-A2" }.Select(n => LotAsync(n, "ASK-A")));
        await Task.WhenAll(new[] { "ASK-B1", "ASK-B2", "ASK-B3", "ASK-B4" }.Select(n => LotAsync(n, "ASK-B")));
        var (two, four) = (await HeldAndLiftedAsync("ASK-A", 2), await HeldAndLiftedAsync("ASK-B", 4));
        Assert.Equal(two, four);
    }

    private async Task<(int Lots, int Trips)> FailedAsync()
    {
        await using var scope = workshop.Services.CreateAsyncScope();
        var found = 0;
        var trips = await DatabaseTrips.DuringAsync(
            workshop,
            async () => found = (await scope.ServiceProvider.GetRequiredService<FailedSamples>().RunAsync(default)).Count
        );
        Assert.NotEqual(0, trips);
        return (found, trips);
    }

    private async Task FailAsync(string panel)
    {
        var serial = (await workshop.PostAsync("parts", new { kind = "board-set", model = "ASKED-1" })).Expect(201).Text("serial");
        object[] readings =
        [
            new { characteristic = "boardNumberInLot", value = 1 },
            new { characteristic = "phantomSourceV", value = 48 },
            new { characteristic = "phantomTerminalV", value = 37 },
            new { characteristic = "supplyCurrentMa", value = 5.5m },
        ];
        await workshop.RecordAsync(serial, "check", new { readings, fittings = new[] { new { position = "panel", lot = panel } } });
    }

    private Task<int> ReportAsync() =>
        DatabaseTrips.DuringAsync(
            workshop,
            async () => (await workshop.GetAsync($"quality/monthly-report.json?month={workshop.Clock.GetUtcNow():yyyy-MM}")).Expect(200)
        );

    private async Task LotAsync(string number, string supplierLot) =>
        (
            await workshop.PostAsync(
                "lots",
                new
                {
                    number,
                    kind = "insulating-ring",
                    supplier = "Invented Supplies",
                    supplierLot,
                    quantity = 100,
                    unit = "pcs",
                },
                Workshop.Quality
            )
        ).Expect(201);

    private async Task<(int Held, int Lifted)> HeldAndLiftedAsync(string supplierLot, int lots)
    {
        var pin = Workshop.PinOf(Workshop.Quality);
        var hold = new
        {
            what = "supplier-lot",
            code = supplierLot,
            reason = "a recall",
            pin,
        };
        var held = await DatabaseTrips.DuringAsync(
            workshop,
            async () =>
                Assert.Equal(lots, (await workshop.PostAsync("quality/trace/holds", hold, Workshop.Quality)).Expect(201).List("lots").Count)
        );
        var decision = (await workshop.GetAsync($"quality/trace/holds?what=supplier-lot&code={supplierLot}")).Expect(200).List()[0];
        var lift = $"quality/trace/holds/{decision.Id()}/release";
        var lifted = await DatabaseTrips.DuringAsync(
            workshop,
            async () =>
                Assert.Equal(
                    $"{lots}",
                    (await workshop.PostAsync(lift, new { reason = "it was another lot", pin }, Workshop.Quality)).Expect(201).Text("lots")
                )
        );
        return (held, lifted);
    }
}
