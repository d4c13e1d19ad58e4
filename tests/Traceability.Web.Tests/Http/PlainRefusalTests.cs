using System.IO.Compression;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;

namespace Traceability.Web.Tests.Http;

/// <summary>
/// What a program is told about a request that could not be read: in words of the interface, with the field, and never in those of this
/// program.
/// </summary>
public sealed partial class PlainRefusalTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("""{"part":"D1"}""", "reason", "Missing: reason")]
    [InlineData("""{"part":"D1","reason":"x","extra":1}""", "extra", "no member 'extra'")]
    [InlineData("""{"part":7,"reason":"x"}""", "part", "a text")]
    [InlineData("""{"part":"D1","reason":null}""", "reason", "'reason' may not be null")]
    [InlineData("""{"part":"D1","reason":"x","reason":"y"}""", "reason", "there twice")]
    [InlineData("""{"part":"D1","reason":"x","occurredAt":"yesterday"}""", "occurredAt", "a time is expected")]
    [InlineData("""{"part":"D1","reason":"x","occurredAt":12}""", "occurredAt", "a time is expected")]
    [InlineData("""{"part":"D1",""", null, "not valid JSON, at line 1")]
    [InlineData("""[]""", null, "an object")]
    [InlineData("null", null, "in JSON")]
    [InlineData("", null, "in JSON")]
    public async Task A_body_that_cannot_be_read_is_told_in_plain_words(string body, string? field, string words) =>
        Told(await workshop.PostAsync("holds", new StringContent(body, Encoding.UTF8, "application/json"), Workshop.Quality), field, words);

    [Theory]
    [InlineData("""{"characteristic":"x","value":null}""", "value", "'value' may not be null")]
    [InlineData("""{"characteristic":"x","value":[]}""", "value", "a number is expected")]
    [InlineData("""[{"characteristic":"x"}]""", "value", "Missing: value")]
    [InlineData("""[null]""", null, "Null stands")]
    public async Task So_is_one_thing_or_a_list_of_them(string body, string? field, string words) =>
        Told(
            await workshop.PostAsync(
                "attempts/00000000-0000-0000-0000-000000000001/readings",
                new StringContent(body, Encoding.UTF8, "application/json")
            ),
            field,
            words
        );

    [Theory]
    [InlineData("parts?free=perhaps", "free", "true or false")]
    [InlineData("parts?revision=first", "revision", "a whole number")]
    [InlineData("parts/D1/history?asOf=yesterday", "asOf", "a time")]
    [InlineData("quality/trace?code=FILM-1", "what", "'what' is missing")]
    public async Task So_is_an_address(string address, string field, string words) => Told(await workshop.GetAsync(address), field, words);

    [Fact]
    public async Task A_model_of_a_choice_is_told_its_words() =>
        Told(
            await workshop.PostAsync(
                $"nonconformities/{Guid.NewGuid()}/disposition",
                new
                {
                    kind = "polish",
                    reason = "x",
                    pin = "1",
                },
                Workshop.Quality
            ),
            "kind",
            "one of rework"
        );

    [Fact]
    public async Task A_body_packed_with_gzip_is_unpacked_and_kept_as_it_was()
    {
        var serial = await workshop.MountAsync();
        var load = (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { serial },
                }
            )
        ).Expect(201).Id();
        var log = workshop.LogOfNow();
        var kept = (await workshop.PostAsync($"loads/{load}/log", Packed(Encoding.UTF8.GetBytes(log), "gzip", "text/csv"))).Expect(201);
        Assert.Equal(
            Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(log))),
            kept.Text("sha256")
        );
    }

    [Fact]
    public async Task A_gzip_body_that_breaks_off_is_refused_and_nothing_is_kept()
    {
        var attempt = await workshop.OpenAsync(await workshop.RegisterAsync("diaphragm"), "mount");
        var packed = await Packed(new byte[200_000], "gzip", "image/jpeg").ReadAsByteArrayAsync();
        Assert.Contains(
            "gzip",
            (await workshop.PostAsync($"attempts/{attempt}/evidence", AsIs(packed[..(packed.Length / 2)], "gzip", "image/jpeg"))).Problem(
                400
            ),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "gzip",
            (
                await workshop.PostAsync($"attempts/{attempt}/evidence", AsIs([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11], "gzip", "image/jpeg"))
            ).Problem(400),
            StringComparison.Ordinal
        );
        Assert.Empty((await workshop.GetAsync($"attempts/{attempt}")).Expect(200).List("evidence"));
    }

    [Fact]
    public async Task What_unpacks_to_more_than_a_file_may_have_is_too_large()
    {
        var attempt = await workshop.OpenAsync(await workshop.RegisterAsync("diaphragm"), "mount");
        var photo = Packed(new byte[(64 * 1024 * 1024) + 1], "gzip", "image/jpeg");
        Assert.True((await photo.ReadAsByteArrayAsync()).Length < 1_000_000);
        (await workshop.PostAsync($"attempts/{attempt}/evidence", photo)).Expect(413);
    }

    [Theory]
    [InlineData("br")]
    [InlineData("deflate")]
    [InlineData("gzip, gzip")]
    public async Task Another_packing_is_refused_as_such(string encoding) =>
        Assert.Contains(
            "not as '" + encoding.Split(',')[0],
            (await workshop.PostAsync("holds", AsIs("{}"u8.ToArray(), encoding, "application/json"), Workshop.Quality)).Problem(415),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("parts?sate=shipped", "sate", "state")]
    [InlineData("stations?limt=5", "limt", "")]
    [InlineData("lots/FILM-1/where-used?asOf=2026-01-01T00:00:00Z", "asOf", "limit, cursor, at")]
    [InlineData("quality/film-lots?model=TEST-1&stag=cure", "stag", "stage")]
    [InlineData("verify/X?revision=1", "revision", "")]
    public async Task A_name_that_an_address_does_not_take_is_refused_and_those_that_it_takes_are_told(
        string address,
        string unknown,
        string known
    )
    {
        var told = await workshop.GetAsync(address);
        Assert.Contains($"'{unknown}'", told.Problem(400), StringComparison.Ordinal);
        Assert.Contains(known, told.Problem(400), StringComparison.Ordinal);
        Assert.Equal("/problems/unknown-query", told.Json.Text("type"));
    }

    [Fact]
    public async Task So_is_a_slip_in_the_query_of_a_command()
    {
        var route = new StringContent("model: X", Encoding.UTF8, "text/yaml");
        Assert.Equal(
            "/problems/unknown-query",
            (await workshop.PostAsync("routes?propsed=true", route, Workshop.Lead)).Expect(400).Text("type")
        );
    }

    [Fact]
    public async Task A_route_that_begins_later_is_said_to_begin_later()
    {
        var before = new DateTimeOffset(2019, 12, 1, 0, 0, 0, TimeSpan.Zero);
        var told = await workshop.PostAsync(
            "parts",
            new
            {
                kind = "diaphragm",
                model = Workshop.Model,
                occurredAt = before,
            },
            Workshop.Importer
        );
        Assert.Contains("in force from 1 Jan 2020 on, and not yet on 1 Dec 2019", told.Problem(400), StringComparison.Ordinal);
        Assert.True(told.Json.At("errors").Has("occurredAt"));
    }

    private static void Told(Reply reply, string? field, string words)
    {
        var detail = reply.Problem(400);
        Assert.Contains(words, detail, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch(OfThisProgram(), reply.Body);
        if (field is not null)
        {
            Assert.Equal(field, reply.Json.At("errors").EnumerateObject().Single().Name.Split('.')[^1]);
        }
    }

    private static ByteArrayContent Packed(byte[] bytes, string encoding, string type)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal))
        {
            gzip.Write(bytes);
        }

        return AsIs(packed.ToArray(), encoding, type);
    }

    private static ByteArrayContent AsIs(byte[] bytes, string encoding, string type)
    {
        var content = new ByteArrayContent(bytes);
        content.Headers.ContentType = new MediaTypeHeaderValue(type);
        content.Headers.TryAddWithoutValidation("Content-Encoding", encoding);
        return content;
    }

    [GeneratedRegex(
        @"System\.|Traceability\.|Nullable|\.NET|constructor|annotation|LineNumber|BytePosition|deserializ|parameter",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex OfThisProgram();
}
