using System.Text;

namespace Traceability.Web.Tests.Misuse;

public sealed class NumberMisuseTests(StrictWorkshop strict) : IClassFixture<StrictWorkshop>
{
    private readonly Workshop workshop = strict.Workshop;

    [Theory]
    [InlineData("\"NaN\"", "Not a number and infinity are not readings")]
    [InlineData("\"Infinity\"", "Not a number and infinity are not readings")]
    [InlineData("\"-∞\"", "Not a number and infinity are not readings")]
    [InlineData("1e400", "exponent must be between -15 and 15")]
    [InlineData("\"1e400\"", "exponent must be between -15 and 15")]
    [InlineData("1e16", "exponent must be between -15 and 15")]
    [InlineData("9000000000000000000", "check the unit")]
    [InlineData("9.12345678901234567890123456789012345678", "digits")]
    [InlineData("9.123456789012345678901234567890123456789", "Too long for a number")]
    [InlineData("1234567890123456789012345678901234567890", "digits")]
    [InlineData("\"1,234\"", "It is unclear whether 1,234 has thousands or decimals")]
    [InlineData("\"9 mm\"", "without a unit")]
    [InlineData("\"9mm\"", "without a unit")]
    [InlineData("\"\"", "Type a number")]
    [InlineData("\"   \"", "Type a number")]
    [InlineData("\"nine\"", "Type a plain number")]
    [InlineData("\"0x9\"", "")]
    [InlineData("\"9\\u0000\"", "")]
    [InlineData("\"٩\"", "Type a plain number")]
    public async Task A_value_that_is_no_plain_number_is_refused_by_every_road(string value, string words)
    {
        var serial = await strict.RegisterAsync();
        await strict.RefusedAsync(
            400,
            words,
            () =>
                JsonAsync(
                    $"parts/{serial}/records",
                    $$"""
                    {"stage":"measure","station":"BENCH-1","instruments":["GAUGE-1"],
                    "readings":[{"characteristic":"heightMm","value":{{value}}}],
                    "fittings":[{"position":"bond","lot":"GLUE-1"}]}
                    """
                )
        );
        var attempt = await workshop.OpenAsync(serial, StrictWorkshop.Stage, $"BENCH-2", StrictWorkshop.Gauge);
        await strict.RefusedAsync(
            400,
            words,
            () => JsonAsync($"attempts/{attempt}/readings", $$"""{"characteristic":"heightMm","value":{{value}}}""")
        );
        await strict.RefusedAsync(
            400,
            words,
            () => JsonAsync("stations/BENCH-2/readings", $$"""{"characteristic":"heightMm","value":{{value}}}""")
        );
        (await workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "end of the test" })).Expect(200);
    }

    [Theory]
    [InlineData("\"9,50\"", "9.50")]
    [InlineData("\" 9.50 \"", "9.50")]
    [InlineData("9.50", "9.50")]
    [InlineData("\"+9.50\"", "9.50")]
    public async Task A_number_keeps_the_digits_in_which_it_was_entered(string value, string kept)
    {
        var serial = await strict.RegisterAsync();
        var closed = (
            await JsonAsync(
                $"parts/{serial}/records",
                $$"""
                {"stage":"measure","station":"BENCH-1","instruments":["GAUGE-1"],
                "readings":[{"characteristic":"heightMm","value":{{value}}}],
                "fittings":[{"position":"bond","lot":"GLUE-1"}]}
                """
            )
        ).Expect(201);
        Assert.Equal(kept, closed.List("readings")[0].At("value").GetRawText());
    }

    [Fact]
    public async Task An_unknown_characteristic_a_computed_one_and_the_same_one_twice_are_refused()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        object Reading(string characteristic) => new { characteristic, value = 850 };
        await strict.RefusedAsync(
            400,
            "Mount has no characteristic 'colour'; it has: coarseHz",
            () => workshop.PostAsync($"attempts/{attempt}/readings", Reading("colour"))
        );
        await strict.RefusedAsync(
            400,
            "coarseHz is there 2 times",
            () => workshop.PostAsync($"attempts/{attempt}/readings", new[] { Reading("coarseHz"), Reading("coarseHz") })
        );
        await strict.RefusedAsync(
            400,
            "no characteristic 'colour'",
            () => workshop.PostAsync($"attempts/{attempt}/readings", new[] { Reading("coarseHz"), Reading("colour") })
        );
        (await workshop.PostAsync($"attempts/{attempt}/readings", Reading("coarseHz"))).Expect(201);
        await strict.RefusedAsync(
            409,
            "was already read as 850",
            () => workshop.PostAsync($"attempts/{attempt}/readings", Reading("coarseHz"))
        );
    }

    [Fact]
    public async Task A_computed_value_is_not_entered()
    {
        var unit = await workshop.RegisterAsync("unit");
        object[] fittings =
        [
            new { position = "capsule", child = await workshop.CapsuleAsync() },
            new { position = "body", lot = Workshop.Body },
        ];
        await workshop.RecordAsync(unit, "assemble", new { fittings });
        var attempt = await workshop.OpenAsync(unit, "final-acoustic", "BENCH-1", "AN-1");
        await strict.RefusedAsync(
            400,
            "cardioidMarginDb is computed, not entered",
            () => workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "cardioidMarginDb", value = 3 })
        );
    }

    private Task<Reply> JsonAsync(string path, string json) =>
        workshop.PostAsync(path, new StringContent(json, Encoding.UTF8, "application/json"));
}
