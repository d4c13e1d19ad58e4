using System.Text.Json;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

/// <summary>Boards of a panel lot are counted against its sampling plan, at the bench and on the lot's page.</summary>
public sealed class BoardSampleTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Route = """
        model: SAMPLE-1
        kind: board-set
        title: Board set
        serialPrefix: SB
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

    /// <summary>
    /// ISO 2859-1: a lot of 100, level II, AQL 1.0: 13 boards are tested, none may be nonconforming. Board 1 is in the sample, board 2 is
    /// not.
    /// </summary>
    [Fact]
    public async Task The_lot_fails_as_soon_as_one_board_too_many_of_its_sample_is_nonconforming()
    {
        await WorkshopSetUp.LotAsync(workshop, "PANEL-9", "board-panel");
        await workshop.RouteAsync(Route);
        await CheckAsync(2, 5.5m);
        Assert.Equal(("open", "0", "1"), await SampleAsync());
        var visitor = await Visitor.SignedInAsync(workshop, Workshop.Quality);
        Assert.DoesNotContain("PANEL-9", (await visitor.GoAsync("/quality")).Text, StringComparison.Ordinal);

        var failed = await CheckAsync(1, 5.5m);

        Assert.Contains(failed.List("findings"), f => f.GetString()!.Contains("the lot fails its plan", StringComparison.Ordinal));
        Assert.Equal(("failed", "1", "1"), await SampleAsync());
        Assert.Contains(
            "PANEL-9 In use, though 1 of 1 boards of its sample are nonconforming and 0 are accepted",
            Words(await visitor.GoAsync("/quality")),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "1 of 1 boards tested so far nonconforming (13 to test, at most 0 accepted)",
            (await visitor.GoAsync("/lots/PANEL-9")).Text,
            StringComparison.Ordinal
        );

        var reading = failed.List("readings").Single(r => r.Text("characteristic") == "supplyCurrentMa").Id();
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = 3.2, reason = "misread" }, Workshop.Quality)).Expect(
            201
        );
        Assert.Equal(("open", "0", "1"), await SampleAsync());
        Assert.DoesNotContain("PANEL-9 In use", Words(await visitor.GoAsync("/quality")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lot_of_something_else_has_no_sample() =>
        Assert.Equal(
            JsonValueKind.Null,
            (await workshop.GetAsync($"lots/{Workshop.Ring}")).Expect(200) is var lot && lot.Has("sample")
                ? lot.At("sample").ValueKind
                : JsonValueKind.Null
        );

    private static string Words(Screen page) => string.Join(' ', page.Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private async Task<JsonElement> CheckAsync(int board, decimal milliampere)
    {
        var serial = (await workshop.PostAsync("parts", new { kind = "board-set", model = "SAMPLE-1" })).Expect(201).Text("serial");
        object[] readings =
        [
            new { characteristic = "boardNumberInLot", value = board },
            new { characteristic = "phantomSourceV", value = 48 },
            new { characteristic = "phantomTerminalV", value = 37 },
            new { characteristic = "supplyCurrentMa", value = milliampere },
        ];
        return await workshop.RecordAsync(
            serial,
            "check",
            new { readings, fittings = new[] { new { position = "panel", lot = "PANEL-9" } } }
        );
    }

    private async Task<(string Verdict, string Nonconforming, string Outside)> SampleAsync()
    {
        var lot = (await workshop.GetAsync("lots/PANEL-9")).Expect(200);
        return (lot.Text("sample.verdict"), lot.Text("sample.nonconforming"), lot.Text("sample.nonconformingOutside"));
    }
}
