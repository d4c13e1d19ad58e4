using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Station;

/// <summary>
/// Whoever may not do a stage may not do a piece of it either: measure, fit, attach, correct or take out in an attempt that somebody else
/// opened.
/// </summary>
public sealed class WhoMayWorkTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Route = """
        model: WORKERS-1
        kind: capsule
        title: Capsule
        serialPrefix: HN
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: stack
            title: Stacking
            method: entered-limits
            qualification: stacking
            slots:
              - {position: ring, lotKind: insulating-ring, required: false}
            evidence:
              - {name: curve, kind: frequency-response, required: false}
            characteristics:
              - {name: torqueNcm, label: Torque, unit: Ncm, lower: 1, upper: 2}
          - code: bake
            title: Baking
            method: entered-limits
            loads: true
            qualification: baking
            evidence:
              - {name: oven-log, kind: climate-log}
          - code: look
            title: Inspection
            method: entered-limits
            notByBuilderOf: [stack]
            characteristics:
              - {name: faults, label: Faults, unit: count, upper: 0}
        """;

    [Fact]
    public async Task Somebody_without_the_qualification_neither_measures_nor_fits_nor_attaches_in_a_stage_that_another_opened()
    {
        var (serial, attempt) = await StackingAsync();
        var before = await CountAsync(serial);

        await RefusedAsync(
            $"attempts/{attempt}/readings",
            new { characteristic = "torqueNcm", value = "1.5" },
            "qualified",
            "Ben Builder is not qualified for stacking"
        );
        await RefusedAsync(
            $"attempts/{attempt}/fittings",
            new { position = "ring", lot = Workshop.Ring },
            "qualified",
            "Ben Builder is not qualified for stacking"
        );
        await RefusedAsync(
            $"attempts/{attempt}/evidence?name=curve",
            Workshop.Csv(Workshop.FlatResponse),
            "qualified",
            "Ben Builder is not qualified for stacking"
        );

        Assert.Equal(before, await CountAsync(serial));
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "torqueNcm", value = "1.5" })).Expect(201);
    }

    [Fact]
    public async Task Somebody_without_the_qualification_neither_corrects_nor_takes_out_in_a_stage_that_another_opened()
    {
        var (serial, attempt) = await StackingAsync();
        var reading = (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "torqueNcm", value = "1.5" }))
            .Expect(201)
            .List("readings")[0]
            .Id();
        (await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "ring", lot = Workshop.Ring })).Expect(201);

        await RefusedAsync(
            $"readings/{reading}/corrections",
            new { value = "1.7", reason = "misread" },
            "qualified",
            "not qualified for stacking"
        );
        await RefusedAsync(
            $"parts/{serial}/removals",
            new { position = "ring", reason = "dusty" },
            "qualified",
            "not qualified for stacking"
        );

        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = "1.7", reason = "misread" })).Expect(201);
        (await workshop.PostAsync($"parts/{serial}/removals", new { position = "ring", reason = "dusty" })).Expect(201);
    }

    [Fact]
    public async Task Who_stacked_takes_no_reading_of_the_inspection_that_another_opened_and_corrects_none()
    {
        var (serial, _) = await BakedAsync();
        var attempt = (
            await workshop.PostAsync($"parts/{serial}/attempts", new { stage = "look", station = "BENCH-1" }, Workshop.OtherBuilder)
        )
            .Expect(201)
            .Id();

        await RefusedAsync(
            $"attempts/{attempt}/readings",
            new { characteristic = "faults", value = 0 },
            "two-people",
            "Bea Builder did Stacking",
            Workshop.Builder
        );
        var reading = (
            await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "faults", value = 1 }, Workshop.OtherBuilder)
        )
            .Expect(201)
            .List("readings")[0]
            .Id();
        await RefusedAsync(
            $"readings/{reading}/corrections",
            new { value = 0, reason = "was dust" },
            "two-people",
            "Bea Builder did Stacking",
            Workshop.Builder
        );
    }

    [Fact]
    public async Task Who_attached_a_file_to_the_stacking_or_corrected_a_reading_of_it_does_not_inspect()
    {
        var (serial, attempt) = await StackingAsync();
        await QualifyAsync(Workshop.OtherBuilder, "stacking");
        await QualifyAsync(Workshop.Importer, "stacking");
        var reading = (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "torqueNcm", value = "1.5" }))
            .Expect(201)
            .List("readings")[0]
            .Id();
        (
            await workshop.PostAsync($"attempts/{attempt}/evidence?name=curve", Workshop.Csv(Workshop.FlatResponse), Workshop.OtherBuilder)
        ).Expect(201);
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = "1.7", reason = "misread" }, Workshop.Importer)).Expect(
            201
        );
        (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200);
        await QualifyAsync(Workshop.OtherBuilder, "stacking", given: false);
        await BakeAsync(serial);

        await RefusedAsync(
            $"parts/{serial}/attempts",
            new { stage = "look", station = "BENCH-1" },
            "two-people",
            "Ben Builder did Stacking"
        );
        await RefusedAsync(
            $"parts/{serial}/attempts",
            new { stage = "look", station = "BENCH-1" },
            "two-people",
            "Ida Importer did Stacking",
            Workshop.Importer
        );
    }

    [Fact]
    public async Task The_log_of_a_load_is_not_kept_from_somebody_who_may_not_do_its_stage()
    {
        var (serial, load) = await InTheOvenAsync();

        var refused = await RefusedAsync(
            $"loads/{load}/log",
            Workshop.Csv(workshop.LogOfNow()),
            "qualified",
            "Ben Builder is not qualified for baking"
        );

        Assert.Contains(serial, refused, StringComparison.Ordinal);
        Assert.Empty((await workshop.GetAsync($"loads/{load}")).Expect(200).List("evidence"));
        (await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(workshop.LogOfNow()))).Expect(201);
    }

    [Fact]
    public async Task An_instrument_is_no_person_and_sends_into_a_stage_whoever_opened_it()
    {
        var (_, attempt) = await StackingAsync();

        (
            await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "torqueNcm", value = "1.5" }, Workshop.Machine)
        ).Expect(201);
    }

    [Fact]
    public async Task Each_reading_says_who_took_it()
    {
        var (serial, attempt) = await StackingAsync();
        await QualifyAsync(Workshop.OtherBuilder, "stacking");
        var answered = (
            await workshop.PostAsync(
                $"attempts/{attempt}/readings",
                new { characteristic = "torqueNcm", value = "1.5" },
                Workshop.OtherBuilder
            )
        ).Expect(201);
        await QualifyAsync(Workshop.OtherBuilder, "stacking", given: false);

        Assert.Equal("Ben Builder", answered.List("readings")[0].Text("by.name"));
        Assert.Equal("Ben Builder", (await workshop.GetAsync($"attempts/{attempt}")).Expect(200).List("readings")[0].Text("by.name"));
        Assert.Equal(
            "Ben Builder",
            (await workshop.GetAsync($"parts/{serial}/history"))
                .Expect(200)
                .List()
                .Single(i => i.Text("what") == "reading")
                .Text("reading.by.name")
        );
        var page = await (await Visitor.SignedInAsync(workshop, Workshop.Quality)).GoAsync($"/parts/{serial}");
        Assert.Contains("typed in by Ben Builder", page.Text, StringComparison.Ordinal);
    }

    /// <summary>A capsule whose stacking the builder has opened.</summary>
    private async Task<(string Serial, Guid Attempt)> StackingAsync()
    {
        await workshop.RouteOnceAsync("WORKERS-1", "capsule", Route);
        await QualifyAsync(Workshop.Builder, "stacking");
        await QualifyAsync(Workshop.Builder, "baking");
        var serial = (await workshop.PostAsync("parts", new { kind = "capsule", model = "WORKERS-1" })).Expect(201).Text("serial");
        return (serial, await workshop.OpenAsync(serial, "stack"));
    }

    private async Task<(string Serial, Guid Load)> InTheOvenAsync()
    {
        var (serial, attempt) = await StackingAsync();
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "torqueNcm", value = "1.5" })).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200);
        return (serial, (
                await workshop.PostAsync(
                    "loads",
                    new
                    {
                        stage = "bake",
                        station = "PLATE-1",
                        parts = new[] { serial },
                    }
                )
            ).Expect(201).Id());
    }

    private async Task<(string Serial, Guid Load)> BakedAsync()
    {
        var (serial, load) = await InTheOvenAsync();
        await FinishAsync(load);
        return (serial, load);
    }

    private async Task BakeAsync(string serial) => await FinishAsync((
                await workshop.PostAsync(
                    "loads",
                    new
                    {
                        stage = "bake",
                        station = "PLATE-1",
                        parts = new[] { serial },
                    }
                )
            ).Expect(201).Id());

    private async Task FinishAsync(Guid load)
    {
        (await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(workshop.LogOfNow()))).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        (await workshop.PostAsync($"loads/{load}/close", new { })).Expect(200);
    }

    private async Task QualifyAsync(string badge, string code, bool given = true) =>
        (await workshop.PostAsync($"people/{badge}/qualifications", new { code, given }, Workshop.Lead)).Expect(200);

    private async Task<string> RefusedAsync(string path, object body, string rule, string because, string badge = Workshop.OtherBuilder)
    {
        var refused = (await workshop.PostAsync(path, body, badge)).Expect(409);
        var check = refused.List("checks").Single(c => c.Text("rule") == rule);
        Assert.Equal("False", check.Text("met"));
        Assert.Contains(because, check.Text("because"), StringComparison.Ordinal);
        return check.Text("because");
    }

    private async Task<int> CountAsync(string serial) => (await workshop.GetAsync($"parts/{serial}/history")).Expect(200).List().Count;
}
