using System.Text;

namespace Traceability.Web.Tests.Http;

public sealed class BadInputTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("""{"part":"D1","reason":"a\u0000b"}""")]
    [InlineData("""{"part":"a\u0000b","reason":"x"}""")]
    [InlineData("""{"part":"D1","reason":"x","extra":1}""")]
    [InlineData("""{"part":7,"reason":"x"}""")]
    [InlineData("""{"part":"D1","reason":"\ud800"}""")]
    [InlineData("""{"part":"D1","reason":"x","occurredAt":"yesterday"}""")]
    [InlineData("""{"part":"D1","reason":"x","occurredAt":"2026-02-30T00:00:00Z"}""")]
    [InlineData("""[]""")]
    [InlineData("""null""")]
    [InlineData("""{""")]
    [InlineData("")]
    public async Task Malformed_bodies_get_400(string body) =>
        (await workshop.PostAsync("holds", new StringContent(body, Encoding.UTF8, "application/json"), Workshop.Quality)).Expect(400);

    [Theory]
    [InlineData("loads", """{"stage":"cure","station":"PLATE-1","parts":[null]}""")]
    [InlineData("loads", """{"stage":"cure","station":"PLATE-1","parts":["x"],"instruments":[null]}""")]
    [InlineData("attempts/00000000-0000-0000-0000-000000000001/readings", "[null]")]
    [InlineData("attempts/00000000-0000-0000-0000-000000000001/readings", "[]")]
    [InlineData("attempts/00000000-0000-0000-0000-000000000001/fittings", "null")]
    [InlineData("attempts/00000000-0000-0000-0000-000000000001/fittings", "[]")]
    public async Task Lists_hold_things_and_not_nulls(string path, string body) =>
        (await workshop.PostAsync(path, new StringContent(body, Encoding.UTF8, "application/json"))).Expect(400);

    [Fact]
    public async Task A_text_longer_than_anybody_types_is_refused()
    {
        var serial = await workshop.RegisterAsync("unit");
        (await workshop.PostAsync("holds", new { part = serial, reason = new string('x', 4001) }, Workshop.Quality)).Expect(400);
        (await workshop.PostAsync("holds", new { part = serial, reason = new string('x', 4000) }, Workshop.Quality)).Expect(201);
    }

    [Fact]
    public async Task A_file_inside_json_may_be_longer()
    {
        var unit = await workshop.RegisterAsync("unit");
        object[] fittings =
        [
            new { position = "capsule", child = await workshop.CapsuleAsync() },
            new { position = "body", lot = Workshop.Body },
        ];
        await workshop.RecordAsync(unit, "assemble", new { fittings });
        var text = Workshop.FlatResponse.Replace(
            "1000,0\n",
            string.Concat(Enumerable.Range(1000, 1000).Select(f => $"{f},0.0\n")),
            StringComparison.Ordinal
        );
        Assert.True(text.Length > 4000);
        await workshop.RecordAsync(
            unit,
            "final-acoustic",
            new
            {
                instruments = new[] { "AN-1" },
                readings = new[] { new { characteristic = "sensitivityCardioidMvPa", value = 14 } },
                evidence = new[]
                {
                    new
                    {
                        name = "cardioid",
                        mediaType = "text/csv",
                        text,
                    },
                },
            }
        );
    }

    [Fact]
    public async Task The_past_is_for_the_importer_and_the_future_for_nobody()
    {
        var serial = await workshop.RegisterAsync("unit");
        object Hold(DateTimeOffset at) =>
            new
            {
                part = serial,
                reason = "x",
                occurredAt = at,
            };
        var now = workshop.Clock.GetUtcNow();
        (await workshop.PostAsync("holds", Hold(now.AddHours(1)), Workshop.Importer)).Expect(400);
        (await workshop.PostAsync("holds", Hold(now.AddHours(-1)), Workshop.Quality)).Expect(403);
        (await workshop.PostAsync("holds", Hold(now.AddHours(-1)), Workshop.Importer)).Expect(201);
        (await workshop.PostAsync("holds", Hold(DateTimeOffset.MinValue), Workshop.Importer)).Expect(400);
        (await workshop.PostAsync("holds", Hold(DateTimeOffset.MaxValue), Workshop.Importer)).Expect(400);
    }

    [Fact]
    public async Task The_same_key_writes_once_and_with_another_body_not_at_all()
    {
        var serial = await workshop.RegisterAsync("unit");
        var first = await workshop.PostAsync("holds", new { part = serial, reason = "once" }, Workshop.Quality, "key-1");
        var again = await workshop.PostAsync("holds", new { part = serial, reason = "once" }, Workshop.Quality, "key-1");
        Assert.Equal(first.Expect(201).Id(), again.Expect(201).Id());
        (await workshop.PostAsync("holds", new { part = serial, reason = "twice" }, Workshop.Quality, "key-1")).Expect(422);
    }
}
