using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace Traceability.Web.Tests.Misuse;

/// <summary>
/// Logs, responses, recordings and readings as benches really deliver them: what is not such a file is refused with its line, what is one
/// is kept, and in neither case is a verdict invented.
/// </summary>
public sealed class BadEvidenceTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Heading = "time,temperature_c,humidity_pct\n";

    private const string Route = """
        model: BAD-1
        kind: capsule
        title: Capsule
        serialPrefix: BE
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: soak
            title: Soak
            method: climate-soak
            evidence: [{name: log, kind: climate-log}]
            characteristics:
              - {name: warmDwellMinutes, label: Dwell, unit: min, lower: 60, entered: false}
              - {name: warmExcursionMinutes, label: Longest excursion, unit: min, entered: false}
            parameters:
              toleranceSource: workshop procedure (invented)
              phases: [{name: warm, temperatureC: 40, temperatureToleranceK: 2, minDwellMinutes: 60, maxGapMinutes: 20}]
          - code: acoustic
            title: Acoustic test
            method: response-in-mask
            evidence:
              - {name: front, kind: frequency-response}
              - {name: noise, kind: noise-recording, required: false}
            characteristics:
              - {name: outputMv, label: Output, unit: mV}
              - {name: referenceOutputMv, label: Reference, unit: mV}
              - {name: sensitivityMvPa, label: Sensitivity, unit: mV/Pa, entered: false}
              - {name: frontMarginDb, label: Margin, unit: dB, lower: 0, entered: false}
              - {name: recordedNoiseDba, label: Noise, unit: dBA, upper: 20, entered: false, required: false}
              - {name: recordedCrackles, label: Crackles, unit: count, upper: 1, entered: false, required: false}
            parameters:
              mask: [{frequencyHz: 100, lowerDb: -3, upperDb: 3}, {frequencyHz: 10000, lowerDb: -3, upperDb: 3}]
              numbers: {referenceSensitivityMvPa: 50}
        """;

    [Theory]
    [InlineData("T+0,40,50|T+30,40,50|T+29,40,50|T+60,40,50", "goes back by 1 min")]
    [InlineData("T+0,40,50|T+30,40,50|T+30,40.1,50|T+60,40,50", "same as on the line before")]
    [InlineData("T+0,40,50|T+30,NaN,50|T+60,40,50", "Line 3")]
    [InlineData("T+0,40,50|T+30,40|T+60,40,50", "Line 3")]
    [InlineData("T+0,40,50|T+30,400,50|T+60,40,50", "temperature_c is 400")]
    [InlineData("T+0,40,50", "")]
    public async Task A_log_whose_clock_or_values_cannot_be_is_refused_with_its_line(string rows, string words)
    {
        var (_, attempt) = await AtSoakAsync();

        var problem = (await workshop.PostAsync($"attempts/{attempt}/evidence?name=log", Workshop.Csv(Log(rows)))).Problem(400);

        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.Contains("Nothing was stored", problem, StringComparison.Ordinal);
        Assert.Contains(
            "log (climate-log file)",
            (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_log_without_a_column_is_refused_with_what_it_has()
    {
        var (_, attempt) = await AtSoakAsync();

        Assert.Contains(
            "temperature_c",
            (
                await workshop.PostAsync(
                    $"attempts/{attempt}/evidence?name=log",
                    Workshop.Csv("time,humidity_pct\n2026-01-01T00:00:00Z,40\n2026-01-01T00:10:00Z,40\n")
                )
            ).Problem(400),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_log_with_a_gap_is_kept_and_the_gap_counts_as_an_excursion()
    {
        var (_, attempt) = await AtSoakAsync();
        await KeepAsync(attempt, "log", Workshop.Csv(Log("T+0,40,50|T+10,40,50|T+20,40,50|T+70,40,50|T+80,40,50")));
        workshop.Clock.Pass(TimeSpan.FromMinutes(81));

        var closed = (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200);

        Assert.Equal("fail", closed.Text("verdict"));
        Assert.Equal("20.0", closed.List("readings").Single(r => r.Text("characteristic") == "warmDwellMinutes").Text("value"));
        Assert.Single((await workshop.GetAsync($"attempts/{attempt}")).Expect(200).List("evidence"));
    }

    [Theory]
    [InlineData("\uFEFFtime;temperature_c;humidity_pct\n", ';', ',')]
    [InlineData("time\ttemperature_c\thumidity_pct\r\n", '\t', '.')]
    public async Task A_log_with_another_separator_a_byte_order_mark_or_decimal_commas_is_judged_like_any_other(
        string heading,
        char separator,
        char point
    )
    {
        var (_, attempt) = await AtSoakAsync();
        var log =
            heading
            + Log("T+0,40.0,50.5|T+20,40.1,50.5|T+40,39.9,50.5|T+60,40.0,50.5")[Heading.Length..]
                .Replace(',', separator)
                .Replace('.', point);
        await KeepAsync(attempt, "log", new StringContent(log, Encoding.UTF8, "text/csv"));
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));

        Assert.Equal("pass", (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200).Text("verdict"));
    }

    [Fact]
    public async Task A_log_of_another_day_is_kept_and_gets_no_verdict()
    {
        var (_, attempt) = await AtSoakAsync();
        await KeepAsync(attempt, "log", Workshop.Csv(Heading + "2020-01-01T00:00:00Z,40,50\n2020-01-01T01:00:00Z,40,50\n"));

        await NoVerdictAsync(attempt, "belongs to another run", files: 1);
    }

    [Theory]
    [InlineData("100,0|1000,0", "")]
    [InlineData("100,0|1000,0|500,0|10000,0", "comes after 1000: sort by rising frequency")]
    [InlineData("100,0|1000,0|1000,0.5|10000,0", "frequency_hz 1000 is given twice")]
    [InlineData("100,0|1000,0|900000,0", "not between 1 and 200000")]
    [InlineData("100,0|1000,900|10000,0", "Line 3")]
    public async Task A_curve_with_too_few_points_or_frequencies_repeated_unsorted_or_out_of_range_is_refused(string points, string words)
    {
        var (_, attempt) = await AtAcousticAsync();

        var problem = (await workshop.PostAsync($"attempts/{attempt}/evidence?name=front", Workshop.Csv(Curve(points)))).Problem(400);

        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.Contains("Nothing was stored", problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_curve_that_ends_inside_the_mask_is_kept_and_gets_no_verdict()
    {
        var (_, attempt) = await AtAcousticAsync();
        await KeepAsync(attempt, "front", Workshop.Csv(Curve("100,0|1000,0|5000,0")));
        await ReadAsync(attempt, 12, 50);

        await NoVerdictAsync(attempt, "ends at", files: 1);
    }

    [Theory]
    [InlineData(0, 50)]
    [InlineData(-12, 50)]
    [InlineData(12, 0)]
    public async Task A_voltage_of_zero_or_of_the_wrong_sign_is_kept_and_gives_no_verdict(int output, int reference)
    {
        var (_, attempt) = await AtAcousticAsync();
        await KeepAsync(attempt, "front", Workshop.Csv(Curve("100,0|1000,0|10000,0")));
        await ReadAsync(attempt, output, reference);

        await NoVerdictAsync(attempt, "a voltage is above zero", files: 1);
    }

    [Fact]
    public async Task A_clipped_recording_is_kept_with_a_warning_and_no_value_is_made_of_it()
    {
        var (kept, closed) = await RecordedAsync(
            Wav([.. Enumerable.Range(0, 2000).Select(i => i is > 500 and < 520 ? short.MaxValue : (short)(i % 7 * 100))])
        );

        Assert.Contains("clipped, first at sample 502", kept, StringComparison.Ordinal);
        Assert.Contains(closed.List("findings"), f => f.GetString()!.Contains("clipped", StringComparison.Ordinal));
        Assert.DoesNotContain(closed.List("readings"), r => r.Text("characteristic").StartsWith("recorded", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_silent_recording_is_kept_with_a_warning_and_no_value_is_made_of_it()
    {
        var (kept, closed) = await RecordedAsync(Wav(new short[2000]));

        Assert.Contains("silent", kept, StringComparison.Ordinal);
        Assert.Contains(closed.List("findings"), f => f.GetString()!.Contains("silent", StringComparison.Ordinal));
        Assert.DoesNotContain(closed.List("readings"), r => r.Text("characteristic").StartsWith("recorded", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_recording_of_a_wrong_format_empty_or_cut_off_is_refused()
    {
        var (_, attempt) = await AtAcousticAsync();
        var good = Wav(new short[2000]);
        var coded = (byte[])good.Clone();
        coded[20] = 85; // A compressed format.
        foreach (
            var (bytes, words) in new[]
            {
                (coded, ""),
                (Wav([]), "holds no samples"),
                (good[..1000], ""),
                ([], ""),
                ("RIFFno sound"u8.ToArray(), ""),
            }
        )
        {
            var problem = (await workshop.PostAsync($"attempts/{attempt}/evidence?name=noise&fullScaleV=1", Sound(bytes))).Problem(400);
            Assert.Contains(words, problem, StringComparison.Ordinal);
            Assert.Contains("Nothing was stored", problem, StringComparison.Ordinal);
        }
    }

    private async Task<(string Warning, JsonElement Closed)> RecordedAsync(byte[] wav)
    {
        var (_, attempt) = await AtAcousticAsync();
        var kept = (await workshop.PostAsync($"attempts/{attempt}/evidence?name=noise&fullScaleV=1", Sound(wav))).Expect(201);
        await KeepAsync(attempt, "front", Workshop.Csv(Curve("100,0|1000,0|10000,0")));
        await ReadAsync(attempt, 12, 50);
        return (
            Assert.Single(kept.List("warnings")).GetString()!,
            (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200)
        );
    }

    private async Task NoVerdictAsync(Guid attempt, string words, int files)
    {
        var problem = (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Problem(409);
        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.Contains("what was recorded so far is kept", problem, StringComparison.Ordinal);
        var kept = (await workshop.GetAsync($"attempts/{attempt}")).Expect(200);
        Assert.Equal(("open", files), (kept.Text("state"), kept.List("evidence").Count));
    }

    private async Task<(string Serial, Guid Attempt)> AtSoakAsync()
    {
        await workshop.RouteOnceAsync("BAD-1", "capsule", Route);
        var serial = (await workshop.PostAsync("parts", new { kind = "capsule", model = "BAD-1" })).Expect(201).Text("serial");
        return (serial, await workshop.OpenAsync(serial, "soak"));
    }

    private async Task<(string Serial, Guid Attempt)> AtAcousticAsync()
    {
        var (serial, soak) = await AtSoakAsync();
        await KeepAsync(soak, "log", Workshop.Csv(Log("T+0,40,50|T+20,40,50|T+40,40,50|T+60,40,50")));
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        Assert.Equal("pass", (await workshop.PostAsync($"attempts/{soak}/close", new { })).Expect(200).Text("verdict"));
        return (serial, await workshop.OpenAsync(serial, "acoustic"));
    }

    private async Task KeepAsync(Guid attempt, string name, HttpContent file) =>
        (await workshop.PostAsync($"attempts/{attempt}/evidence?name={name}", file)).Expect(201);

    private async Task ReadAsync(Guid attempt, int output, int reference)
    {
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "outputMv", value = output })).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "referenceOutputMv", value = reference })).Expect(
            201
        );
    }

    /// <summary>Rows of "T+minutes,..." from now on.</summary>
    private string Log(string rows) =>
        Heading
        + string.Concat(
            rows.Split('|')
                .Select(row =>
                {
                    var fields = row.Split(',', 2);
                    var at = workshop.Clock.GetUtcNow().AddMinutes(int.Parse(fields[0][2..], null));
                    return $"{at:yyyy-MM-dd'T'HH:mm:ss'Z'},{fields[1]}\n";
                })
        );

    private static string Curve(string points) => "frequency_hz,level_db\n" + points.Replace('|', '\n') + "\n";

    private static ByteArrayContent Sound(byte[] bytes)
    {
        var content = new ByteArrayContent(bytes);
        content.Headers.ContentType = new MediaTypeHeaderValue("audio/wav");
        return content;
    }

    /// <summary>A plain recording: one channel, 16 bits, 48 kHz.</summary>
    private static byte[] Wav(short[] samples)
    {
        using var file = new MemoryStream();
        using var write = new BinaryWriter(file);
        write.Write("RIFF"u8);
        write.Write(36 + 2 * samples.Length);
        write.Write("WAVEfmt "u8);
        write.Write(16);
        write.Write((short)1);
        write.Write((short)1);
        write.Write(48_000);
        write.Write(96_000);
        write.Write((short)2);
        write.Write((short)16);
        write.Write("data"u8);
        write.Write(2 * samples.Length);
        foreach (var sample in samples)
        {
            write.Write(sample);
        }

        return file.ToArray();
    }
}
