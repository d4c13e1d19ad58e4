using Traceability.Domain.Stages.AcousticTest.Noise;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Noise;

public class CrackleCountTests
{
    [Fact]
    public void Plain_noise_has_no_crackles_and_its_floor_is_its_deviation()
    {
        var count = CrackleCount.In(Recording.Noise(200_000), Recording.RateHz);
        Assert.Equal(0, count.Count);
        Assert.Equal(1e-3, count.NoiseFloor, 2e-5);
        Assert.Equal(8 * count.NoiseFloor, count.Threshold, 1e-12);
    }

    [Fact]
    public void Crackles_are_counted_with_the_times_of_their_beginnings()
    {
        var samples = Recording.Noise(200_000);
        foreach (var at in new[] { 10_000, 10_040, 60_000, 150_000 })
            samples[at] = 0.05f;
        var count = CrackleCount.In(samples, Recording.RateHz);
        Assert.Equal(3, count.Count); // the second lies 0.8 ms after the first
        Assert.Equal([10_000 / 48_000.0, 1.25, 3.125], count.TimesS);
        Assert.Equal(4, CrackleCount.In(samples, Recording.RateHz, holdMs: 0.5).Count);
    }

    [Fact]
    public void Many_crackles_hardly_raise_the_floor()
    {
        // Ten a second: the high-pass spreads each over some milliseconds, so that hundreds a second would fill the whole time.
        var samples = Recording.Noise(100_000);
        for (var i = 0; i < samples.Length; i += 4800)
            samples[i] = 0.2f;
        Assert.Equal(1e-3, CrackleCount.In(samples, Recording.RateHz).NoiseFloor, 5e-5);
    }

    [Fact]
    public void An_offset_changes_nothing()
    {
        var samples = Recording.Noise(50_000);
        samples[20_000] = 0.05f;
        Assert.Equal(1, CrackleCount.In([.. samples.Select(s => s + 0.25f)], Recording.RateHz).Count);
    }

    /// <summary>Twenty crackles of 30 µV in noise of 1 µV, with 60 µV of rumble at 20 Hz below them.</summary>
    [Fact]
    public void Crackles_are_found_under_rumble_many_times_as_strong()
    {
        var samples = Recording.Noise(480_000, 1e-6);
        for (var i = 0; i < samples.Length; i++)
            samples[i] += (float)(60e-6 * Math.Sin(2 * Math.PI * 20 * i / Recording.RateHz));
        for (var k = 0; k < 20; k++)
            samples[20_000 + 22_000 * k] += 30e-6f;

        var count = CrackleCount.In(samples, Recording.RateHz);

        Assert.Equal(20, count.Count);
        Assert.Equal(1e-6, count.NoiseFloor, 0.05e-6);
    }

    [Fact]
    public void A_recording_that_begins_in_the_middle_of_a_rumble_does_not_begin_with_a_crackle()
    {
        var samples = Recording.Noise(96_000, 1e-6);
        for (var i = 0; i < samples.Length; i++)
            samples[i] += (float)(60e-6 * Math.Cos(2 * Math.PI * 20 * i / Recording.RateHz));

        Assert.Equal(0, CrackleCount.In(samples, Recording.RateHz).Count);
    }

    [Fact]
    public void Silence_emptiness_and_non_numbers_give_no_verdict()
    {
        Assert.Equal("the recording is empty", CrackleCount.In([], Recording.RateHz).Problem);
        Assert.Equal(
            "the recording is silent or its steps are coarser than its noise",
            CrackleCount.In(new float[1000], Recording.RateHz).Problem
        );
        Assert.Equal("sample 3 is no number", CrackleCount.In([0, 1, float.NaN], Recording.RateHz).Problem);
    }

    [Fact]
    public void A_higher_threshold_never_counts_more()
    {
        var samples = Recording.Noise(100_000);
        int[] counts = [.. new[] { 3.0, 3.5, 4, 5, 8 }.Select(k => CrackleCount.In(samples, Recording.RateHz, k, 0).Count)];
        Assert.Equal(counts.OrderDescending(), counts);
        Assert.True(counts[0] > 0);
    }
}
