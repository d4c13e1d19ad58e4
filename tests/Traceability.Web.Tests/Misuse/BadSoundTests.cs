using System.Net.Http.Headers;
using System.Text.Json;

namespace Traceability.Web.Tests.Misuse;

/// <summary>
/// Responses, recordings and voltages as benches really deliver them: refused with their line, or kept, and no verdict is invented.
/// </summary>
public sealed class BadSoundTests(Workshop workshop) : IClassFixture<Workshop>
{
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
        await workshop.KeepAsync(attempt, "front", Workshop.Csv(Curve("100,0|1000,0|5000,0")));
        await ReadAsync(attempt, 12, 50);

        await workshop.NoVerdictAsync(attempt, "ends at", files: 1);
    }

    [Theory]
    [InlineData(0, 50)]
    [InlineData(-12, 50)]
    [InlineData(12, 0)]
    public async Task A_voltage_of_zero_or_of_the_wrong_sign_is_kept_and_gives_no_verdict(int output, int reference)
    {
        var (_, attempt) = await AtAcousticAsync();
        await workshop.KeepAsync(attempt, "front", Workshop.Csv(Curve("100,0|1000,0|10000,0")));
        await ReadAsync(attempt, output, reference);

        await workshop.NoVerdictAsync(attempt, "a voltage is above zero", files: 1);
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
        await workshop.KeepAsync(attempt, "front", Workshop.Csv(Curve("100,0|1000,0|10000,0")));
        await ReadAsync(attempt, 12, 50);
        return (
            Assert.Single(kept.List("warnings")).GetString()!,
            (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200)
        );
    }

    private async Task<(string Serial, Guid Attempt)> AtAcousticAsync()
    {
        var (serial, soak) = await workshop.AtSoakAsync();
        await workshop.KeepAsync(soak, "log", Workshop.Csv(workshop.Log("T+0,40,50|T+20,40,50|T+40,40,50|T+60,40,50")));
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        Assert.Equal("pass", (await workshop.PostAsync($"attempts/{soak}/close", new { })).Expect(200).Text("verdict"));
        return (serial, await workshop.OpenAsync(serial, "acoustic"));
    }

    private async Task ReadAsync(Guid attempt, int output, int reference)
    {
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "outputMv", value = output })).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "referenceOutputMv", value = reference })).Expect(
            201
        );
    }

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
