using System.Text.Json;

namespace Traceability.Web.Tests.Station;

/// <summary>A machine's reading lands where it belongs, when it was taken, or nowhere.</summary>
public sealed class StationDoorTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task The_answer_names_the_part_the_attempt_and_the_stage()
    {
        var (serial, attempt) = await VerifyingAsync("BENCH-1");
        var taken = (await SendAsync("RB-1", "BENCH-1", new { characteristic = "ringHz", value = 901 })).Expect(201);
        Assert.Equal((serial, attempt, "verify"), (taken.Text("serial"), taken.Id("attempt"), taken.Text("stage")));
        await EndAsync(attempt);
    }

    [Fact]
    public async Task An_instrument_of_a_kind_that_the_stage_does_not_ask_for_is_refused()
    {
        var (serial, attempt) = await VerifyingAsync("BENCH-1");
        var refused = await SendAsync("AN-1", "BENCH-1", new { characteristic = "ringHz", value = 901 });
        Assert.Contains("AN-1 is of kind acoustic-analyser", refused.Problem(409), StringComparison.Ordinal);
        Assert.Equal("/problems/instrument-of-another-kind", refused.Json.Text("type"));
        Assert.Empty((await workshop.GetAsync($"attempts/{attempt}")).Expect(200).List("readings"));
        await EndAsync(attempt);

        var mount = await workshop.OpenAsync(await workshop.RegisterAsync("diaphragm"), "mount");
        Assert.Contains(
            "asks for no instrument",
            (await SendAsync("AN-1", "BENCH-1", new { characteristic = "coarseHz", value = 850 })).Problem(409),
            StringComparison.Ordinal
        );
        await EndAsync(mount);
        Assert.NotEmpty(serial);
    }

    [Fact]
    public async Task An_instrument_that_the_attempt_names_may_send_though_the_stage_asks_for_none()
    {
        var attempt = await workshop.OpenAsync(await workshop.RegisterAsync("diaphragm"), "mount", "BENCH-1", "AN-1");
        (await SendAsync("AN-1", "BENCH-1", new { characteristic = "coarseHz", value = 850 })).Expect(201);
        await EndAsync(attempt);
    }

    [Fact]
    public async Task A_part_or_attempt_that_is_named_must_be_the_one_that_is_open()
    {
        var (serial, attempt) = await VerifyingAsync("BENCH-1");
        var other = await SendAsync(
            "RB-1",
            "BENCH-1",
            new
            {
                characteristic = "ringHz",
                value = 901,
                serial = "D99-99999",
            }
        );
        Assert.Contains($"is open: {serial}", other.Problem(409), StringComparison.Ordinal);
        Assert.Equal("/problems/another-attempt-open", other.Json.Text("type"));
        (
            await SendAsync(
                "RB-1",
                "BENCH-1",
                new
                {
                    characteristic = "ringHz",
                    value = 901,
                    attempt = Guid.NewGuid(),
                }
            )
        ).Expect(409);
        (
            await SendAsync(
                "RB-1",
                "BENCH-1",
                new
                {
                    characteristic = "ringHz",
                    value = 901,
                    serial = serial.ToLowerInvariant(),
                    attempt,
                }
            )
        ).Expect(201);
        await EndAsync(attempt);
    }

    [Fact]
    public async Task Where_several_are_open_the_one_that_is_named_is_taken()
    {
        var (first, one) = await VerifyingAsync("BENCH-1");
        var (second, two) = await VerifyingAsync("BENCH-1");
        (await SendAsync("RB-1", "BENCH-1", new { characteristic = "ringHz", value = 901 })).Expect(409);
        Assert.Equal(second, (
                await SendAsync(
                    "RB-1",
                    "BENCH-1",
                    new
                    {
                        characteristic = "ringHz",
                        value = 901,
                        serial = second,
                    }
                )
            ).Expect(201).Text("serial"));
        Assert.Equal(first, (
                await SendAsync(
                    "RB-1",
                    "BENCH-1",
                    new
                    {
                        characteristic = "ringHz",
                        value = 902,
                        attempt = one,
                    }
                )
            ).Expect(201).Text("serial"));
        await EndAsync(one);
        await EndAsync(two);
    }

    [Fact]
    public async Task A_buffered_reading_keeps_its_true_time_inside_the_attempt_and_none_before_it()
    {
        var before = workshop.Clock.GetUtcNow().AddSeconds(-1);
        var (serial, attempt) = await VerifyingAsync("BENCH-1");
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        var taken = workshop.Clock.GetUtcNow();
        taken = taken.AddTicks(-(taken.Ticks % TimeSpan.TicksPerSecond));
        workshop.Clock.Pass(TimeSpan.FromMinutes(40));
        var early = await SendAsync(
            "RB-1",
            "BENCH-1",
            new
            {
                characteristic = "ringHz",
                value = 901,
                occurredAt = before,
            }
        );
        Assert.Contains("before the attempt", early.Problem(409), StringComparison.Ordinal);
        Assert.Equal("/problems/out-of-order", early.Json.Text("type"));
        (
            await SendAsync(
                "RB-1",
                "BENCH-1",
                new
                {
                    characteristic = "ringHz",
                    value = 901,
                    occurredAt = workshop.Clock.GetUtcNow().AddMinutes(10),
                }
            )
        ).Expect(400);
        (
            await SendAsync(
                "RB-1",
                "BENCH-1",
                new
                {
                    characteristic = "ringHz",
                    value = 901,
                    occurredAt = taken,
                }
            )
        ).Expect(201);
        var told = (await workshop.GetAsync($"parts/{serial}/history"))
            .Expect(200)
            .List()
            .Single(h => h.Text("what") == "reading" && h.Text("reading.characteristic") == "ringHz");
        Assert.Equal(taken, told.At("occurredAt").GetDateTimeOffset());
        await EndAsync(attempt);
    }

    [Fact]
    public async Task A_file_that_a_logger_could_not_send_keeps_its_true_time_too_and_a_person_still_states_no_past()
    {
        var attempt = await workshop.OpenAsync(await workshop.RegisterAsync("diaphragm"), "mount", "BENCH-1", "RB-1");
        workshop.Clock.Pass(TimeSpan.FromMinutes(30));
        var then = workshop.Clock.GetUtcNow().AddMinutes(-20);
        var photo = new ByteArrayContent(
            Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==")
        );
        photo.Headers.ContentType = new("image/png");
        (await SendToAsync("RB-1", $"attempts/{attempt}/evidence?occurredAt={Uri.EscapeDataString(then.ToString("o"))}", photo)).Expect(
            201
        );
        (
            await workshop.PostAsync(
                $"attempts/{attempt}/readings",
                new
                {
                    characteristic = "coarseHz",
                    value = 850,
                    occurredAt = then,
                }
            )
        ).Expect(403);
        (
            await workshop.PostAsync(
                $"attempts/{attempt}/readings",
                new
                {
                    characteristic = "coarseHz",
                    value = 850,
                    occurredAt = then.AddHours(-2),
                },
                Workshop.Importer
            )
        ).Expect(409);
        (
            await workshop.PostAsync(
                $"attempts/{attempt}/readings",
                new
                {
                    characteristic = "coarseHz",
                    value = 850,
                    occurredAt = then,
                },
                Workshop.Importer
            )
        ).Expect(201);
        await EndAsync(attempt);
    }

    private async Task<(string Serial, Guid Attempt)> VerifyingAsync(string station)
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        return (serial, await workshop.OpenAsync(serial, "verify", station, "RB-1"));
    }

    private async Task EndAsync(Guid attempt) =>
        (await workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "a test" })).Expect(200);

    private Task<Reply> SendAsync(string instrument, string station, object body) =>
        SendToAsync(
            instrument,
            $"stations/{station}/readings",
            new StringContent(JsonSerializer.Serialize(body), System.Text.Encoding.UTF8, "application/json")
        );

    private async Task<Reply> SendToAsync(string instrument, string path, HttpContent content)
    {
        var token = (await workshop.PostAsync($"instruments/{instrument}/tokens", new { title = "a test" }, Workshop.Lead))
            .Expect(201)
            .Text("token");
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/{path}") { Content = content };
        request.Headers.Authorization = new("Bearer", token);
        return await workshop.SendAsync(request, null);
    }
}
