using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

/// <summary>Eight at once decide, lift, register and name: one wins where one may, and what is stored is whole.</summary>
public sealed class DeskRaceTests(Workshop workshop) : IClassFixture<Workshop>, IAsyncLifetime
{
    public Task InitializeAsync() => Task.CompletedTask;

    public async Task DisposeAsync()
    {
        await using var health = new HealthCheck(workshop);
        await health.PassAsync();
    }

    [Fact]
    public async Task One_of_eight_decisions_stands()
    {
        var serial = await workshop.MountAsync();
        var raised = (await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "bent", description = "bent" }))
            .Expect(201)
            .Id();
        await Racing.OneWinsAsync(
            201,
            "decided already",
            i =>
                workshop.PostAsync(
                    $"nonconformities/{raised}/disposition",
                    new
                    {
                        kind = i % 2 == 0 ? "scrap" : "concession",
                        reason = "r",
                        pin = Workshop.PinOf(Workshop.Quality),
                    },
                    Workshop.Quality
                )
        );
    }

    [Fact]
    public async Task One_of_eight_lifts_the_hold()
    {
        var hold = (await workshop.PostAsync("holds", new { part = await workshop.MountAsync(), reason = "look" }, Workshop.Quality))
            .Expect(201)
            .Id();
        await Racing.OneWinsAsync(
            201,
            "lifted already",
            _ => workshop.PostAsync($"holds/{hold}/release", new { reason = "looked" }, Workshop.Quality)
        );
    }

    [Theory]
    [InlineData("serial")]
    [InlineData("carrier")]
    [InlineData("lot")]
    [InlineData("film lot")]
    [InlineData("badge")]
    [InlineData("instrument")]
    [InlineData("station")]
    public async Task One_of_eight_gets_the_name(string what)
    {
        var name = $"RACE-{Guid.NewGuid():N}"[..14].ToUpperInvariant();
        await Racing.OneWinsAsync(
            201,
            name,
            _ =>
                what switch
                {
                    "serial" => workshop.PostAsync(
                        "parts",
                        new
                        {
                            kind = "unit",
                            model = Workshop.Model,
                            serial = name,
                        }
                    ),
                    "carrier" => workshop.PostAsync(
                        "parts",
                        new
                        {
                            kind = "unit",
                            model = Workshop.Model,
                            carrier = name,
                        }
                    ),
                    "lot" => workshop.PostAsync(
                        "lots",
                        new
                        {
                            number = name,
                            kind = "body",
                            supplier = "Invented",
                            supplierLot = "S",
                            quantity = 1,
                            unit = "pcs",
                        },
                        Workshop.Quality
                    ),
                    "film lot" => workshop.PostAsync(
                        "lots",
                        new
                        {
                            number = name,
                            kind = "film",
                            supplier = "Invented",
                            supplierLot = "S",
                            quantity = 1,
                            unit = "m",
                            film = new { baseThicknessUm = 6, metalThicknessNm = 40 },
                        },
                        Workshop.Quality
                    ),
                    "badge" => workshop.PostAsync("people", new { badge = name, name = "Invented Person" }, Workshop.Lead),
                    "instrument" => workshop.PostAsync(
                        "instruments",
                        new
                        {
                            code = name,
                            kind = "gauge",
                            title = "Gauge",
                        },
                        Workshop.Lead
                    ),
                    _ => workshop.PostAsync("stations", new { code = name, title = "Bench" }, Workshop.Lead),
                }
        );
    }

    [Fact]
    public async Task Eight_registrations_at_once_get_eight_serials()
    {
        var replies = await Task.WhenAll(
            Enumerable.Range(0, Racing.AtOnce).Select(_ => workshop.PostAsync("parts", new { kind = "unit", model = Workshop.Model }))
        );
        Assert.Equal(Racing.AtOnce, replies.Select(r => r.Expect(201).Text("serial")).Distinct().Count());
    }

    [Fact]
    public async Task Eight_facts_about_one_lot_at_once_are_all_kept()
    {
        var number = $"RACE-{Guid.NewGuid():N}"[..12].ToUpperInvariant();
        await WorkshopSetUp.LotAsync(workshop, number, "body");
        var replies = await Task.WhenAll(
            Enumerable
                .Range(0, Racing.AtOnce)
                .Select(i => workshop.PostAsync("holds", new { lot = number, reason = $"reason {i}" }, Workshop.Quality))
        );
        Assert.All(replies, r => r.Expect(201));
    }
}
