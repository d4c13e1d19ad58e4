using System.Net.Http.Headers;
using System.Text;

namespace Traceability.Web.Tests.Misuse;

public sealed class FileMisuseTests(StrictWorkshop strict) : IClassFixture<StrictWorkshop>
{
    private readonly Workshop workshop = strict.Workshop;

    [Theory]
    [InlineData("frequency_hz,level_db\n100,0\n1000,loud\n", "Line 3")]
    [InlineData("frequency_hz,level_db\n100,0\n1000\n", "Line 3")]
    [InlineData("frequency_hz,level_db\n100,0\n1000,NaN\n", "Line 3")]
    [InlineData("frequency_hz,level_db\n100,0\n1000,1e400\n", "Line 3")]
    [InlineData("# a remark\n\nfrequency_hz,level_db\n100,0\n-1000,0\n", "Line 5")]
    [InlineData("frequency,level\n100,0\n", "The heading must name")]
    [InlineData("", "The file is empty")]
    [InlineData("frequency_hz,level_db\n", "")]
    [InlineData("a\0b", "not plain text")]
    public async Task A_response_with_a_bad_line_is_refused_with_its_number(string csv, string words)
    {
        var (unit, attempt) = await AtFinalTestAsync();
        await strict.RefusedAsync(400, words, () => workshop.PostAsync($"attempts/{attempt}/evidence?name=cardioid", Workshop.Csv(csv)));
        await GiveUpAsync(attempt);
        await strict.RefusedAsync(
            400,
            words,
            () =>
                workshop.PostAsync(
                    $"parts/{unit}/records",
                    new
                    {
                        stage = "final-acoustic",
                        station = "BENCH-1",
                        instruments = new[] { "AN-1" },
                        readings = new[] { new { characteristic = "sensitivityCardioidMvPa", value = 14 } },
                        evidence = new[] { new { name = "cardioid", base64 = Convert.ToBase64String(Encoding.UTF8.GetBytes(csv)) } },
                    }
                )
        );
    }

    [Theory]
    [InlineData("\uFEFFfrequency_hz;level_db\n100;0,5\n1000;0,0\n10000;-0,5\n")]
    [InlineData("\"frequency_hz\",\"level_db\"\r\n100,0\r\n1000,0\r\n10000,0\r\n")]
    [InlineData("# analyser\nlevel_db\tfrequency_hz\n0\t100\n0\t1000\n0\t10000\n")]
    public async Task A_byte_order_mark_semicolons_tabs_and_decimal_commas_are_taken(string csv)
    {
        var attempt = await workshop.OpenAsync(await AssembleAsync(), "final-acoustic", "BENCH-1", "AN-1");
        var file = new ByteArrayContent(Encoding.UTF8.GetBytes(csv));
        file.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
        (await workshop.PostAsync($"attempts/{attempt}/evidence?name=cardioid", file)).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "sensitivityCardioidMvPa", value = 14 })).Expect(
            201
        );
        Assert.Equal("pass", (await workshop.PostAsync($"attempts/{attempt}/close", null)).Expect(200).Text("verdict"));
    }

    [Theory]
    [InlineData("text/plain", 415, "Nothing was stored")]
    [InlineData("application/json", 415, "Nothing was stored")]
    [InlineData("application/octet-stream", 415, "Nothing was stored")]
    [InlineData("text/csv; charset=utf-16", 400, "not plain text")]
    [InlineData("image/png", 400, "Nothing was stored")]
    [InlineData("image/jpeg", 400, "Nothing was stored")]
    [InlineData("audio/wav", 400, "takes no file 'photo'")]
    public async Task A_file_of_another_type_or_that_is_not_what_it_says_is_refused(string mediaType, int status, string words)
    {
        var (_, attempt) = await AtFinalTestAsync();
        var file = new ByteArrayContent(
            status == 400 && mediaType.StartsWith("text", StringComparison.Ordinal)
                ? Encoding.Unicode.GetBytes(Workshop.FlatResponse)
                : "no picture and no sound"u8.ToArray()
        );
        file.Headers.ContentType = MediaTypeHeaderValue.Parse(mediaType);
        await strict.RefusedAsync(
            status,
            words,
            () => workshop.PostAsync($"attempts/{attempt}/evidence?name={(mediaType[0] == 't' ? "cardioid" : "photo")}", file)
        );
        await GiveUpAsync(attempt);
    }

    [Fact]
    public async Task A_file_that_the_stage_does_not_ask_for_is_refused()
    {
        var (_, attempt) = await AtFinalTestAsync();
        await strict.RefusedAsync(
            400,
            "takes no file 'omni'; it takes: cardioid (frequency-response)",
            () => workshop.PostAsync($"attempts/{attempt}/evidence?name=omni", Workshop.Csv(Workshop.FlatResponse))
        );
        await strict.RefusedAsync(
            409,
            "still needs: sensitivityCardioidMvPa, cardioid (frequency-response file)",
            () => workshop.PostAsync($"attempts/{attempt}/close", null)
        );
        await GiveUpAsync(attempt);
    }

    /// <summary>One unit serves all tests that are refused: building one takes two hours of the workshop's clock.</summary>
    private async Task<(string Unit, Guid Attempt)> AtFinalTestAsync()
    {
        var unit = await strict.OnceAsync("unit at its final test", AssembleAsync);
        return (unit, await workshop.OpenAsync(unit, "final-acoustic", "BENCH-1", "AN-1"));
    }

    private async Task GiveUpAsync(Guid attempt) =>
        (await workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "enough of it" })).Expect(200);

    private async Task<string> AssembleAsync()
    {
        var unit = await workshop.RegisterAsync("unit");
        object[] fittings =
        [
            new { position = "capsule", child = await workshop.CapsuleAsync() },
            new { position = "body", lot = Workshop.Body },
        ];
        await workshop.RecordAsync(unit, "assemble", new { fittings });
        return unit;
    }

    [Fact]
    public async Task A_route_file_whose_bytes_are_not_UTF_8_is_refused_in_words()
    {
        var problem = (
            await workshop.PostAsync(
                "routes",
                new ByteArrayContent([0x6d, 0xff, 0xfe, 0x00]) { Headers = { ContentType = new("text/yaml") } },
                Workshop.Lead
            )
        ).Problem(400);
        Assert.Contains("not text in UTF-8", problem, StringComparison.Ordinal);
    }
}
