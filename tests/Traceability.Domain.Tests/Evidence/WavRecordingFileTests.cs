using System.Buffers.Binary;
using CsCheck;
using Traceability.Domain.Evidence;

namespace Traceability.Domain.Tests.Evidence;

public class WavRecordingFileTests
{
    private static byte[] Wav(
        int bits,
        bool floating,
        byte[] data,
        ushort channels = 1,
        uint rate = 48_000,
        uint? dataSize = null,
        bool extensible = false
    )
    {
        var tag = (ushort)(floating ? 3 : 1);
        byte[] format =
        [
            .. U16(extensible ? (ushort)0xFFFE : tag),
            .. U16(channels),
            .. U32(rate),
            .. U32(rate * (uint)bits / 8),
            .. U16((ushort)(bits / 8)),
            .. U16((ushort)bits),
        ];
        if (extensible)
            format = [.. format, .. U16(22), .. U16((ushort)bits), .. U32(4), .. U16(tag), .. new byte[14]];
        byte[] list = [.. "LIST"u8, .. U32(3), 1, 2, 3, 0]; // odd, so padded
        byte[] body =
        [
            .. "WAVE"u8,
            .. list,
            .. "fmt "u8,
            .. U32((uint)format.Length),
            .. format,
            .. "data"u8,
            .. U32(dataSize ?? (uint)data.Length),
            .. data,
        ];
        return [.. "RIFF"u8, .. U32((uint)body.Length), .. body];
    }

    private static byte[] U16(ushort value)
    {
        var b = new byte[2];
        BinaryPrimitives.WriteUInt16LittleEndian(b, value);
        return b;
    }

    private static byte[] U32(uint value)
    {
        var b = new byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(b, value);
        return b;
    }

    private static byte[] Pcm16(params short[] samples) => [.. samples.SelectMany(sample => U16((ushort)sample))];

    private static byte[] Pcm24(params int[] samples) => [.. samples.SelectMany(sample => U32((uint)sample)[..3])];

    private static byte[] Pcm32(params int[] samples) => [.. samples.SelectMany(sample => U32((uint)sample))];

    private static byte[] Float32(params float[] samples) => [.. samples.SelectMany(BitConverter.GetBytes)];

    private static FileFault Fault(byte[] wav, double fullScaleV = 1) =>
        Assert.Single(WavRecordingFile.Read(wav, fullScaleV).Problems).Fault;

    [Fact]
    public void Half_of_full_scale_is_half_its_volts_in_every_format()
    {
        byte[][] files =
        [
            Wav(16, false, Pcm16(16384, -16384, 0)),
            Wav(24, false, Pcm24(4194304, -4194304, 0)),
            Wav(32, false, Pcm32(1073741824, -1073741824, 0)),
            Wav(32, true, Float32(0.5f, -0.5f, 0)),
            Wav(24, false, Pcm24(4194304, -4194304, 0), extensible: true),
            Wav(32, true, Float32(0.5f, -0.5f, 0), extensible: true),
        ];

        foreach (var file in files)
        {
            var recording = WavRecordingFile.Read(file, fullScaleV: 4).Data!;
            Assert.Equal([2f, -2f, 0f], recording.Volts.ToArray());
            Assert.Equal(2, recording.PeakV);
            Assert.Equal(48_000, recording.SampleRateHz);
            Assert.Equal(3 / 48_000.0, recording.Duration.TotalSeconds, 6);
        }
    }

    [Fact]
    public void The_smallest_step_of_24_bits_keeps_its_sign() =>
        Assert.Equal(
            [-1f, 1f, 8388607f],
            WavRecordingFile.Read(Wav(24, false, Pcm24(-1, 1, 8388607)), 1).Data!.Volts.ToArray().Select(v => v * 8388608f)
        );

    [Fact]
    public void Other_formats_are_told_apart_from_other_files()
    {
        Assert.Equal(FileFault.WrongFormat, Fault("not a recording at all"u8.ToArray()));
        Assert.Equal(FileFault.WrongFormat, Fault(Wav(8, false, [1, 2, 3])));
        Assert.Equal(FileFault.WrongFormat, Fault(Wav(16, true, Pcm16(1, 2, 3))));
        Assert.Equal(FileFault.WrongFormat, Fault(Wav(16, false, Pcm16(1, 2, 3, 4), channels: 2)));
        Assert.Equal(FileFault.WrongFormat, Fault(Wav(16, false, Pcm16(1, 2, 3), rate: 7_999)));
        Assert.Equal(FileFault.WrongFormat, Fault([.. "RIFF"u8, .. U32(12), .. "WAVEdata"u8, .. U32(0)]));
    }

    [Fact]
    public void Empty_is_told_apart_from_cut_off()
    {
        Assert.Equal(FileFault.TooLittle, Fault([]));
        Assert.Equal(FileFault.TooLittle, Fault(Wav(16, false, [])));
        Assert.Equal(FileFault.CutOff, Fault(Wav(16, false, Pcm16(1, 2, 3), dataSize: 7)));
        Assert.Equal(FileFault.CutOff, Fault(Wav(16, false, Pcm16(1, 2, 3))[..50]));
        Assert.Equal(FileFault.CutOff, Fault(Wav(16, false, [])[..40]));
    }

    [Fact]
    public void A_recorder_that_streams_leaves_the_length_open() =>
        Assert.Equal(3, WavRecordingFile.Read(Wav(16, false, Pcm16(1, 2, 3), dataSize: uint.MaxValue), 1).Data?.Volts.Length);

    [Fact]
    public void Three_samples_in_a_row_at_the_end_of_the_scale_are_clipped_and_two_are_not()
    {
        Assert.Equal(FileFault.Clipped, Fault(Wav(16, false, Pcm16(0, 32767, 32767, 32767, 0))));
        Assert.Equal(FileFault.Clipped, Fault(Wav(24, false, Pcm24(0, -8388608, -8388608, -8388608))));
        Assert.Equal(FileFault.Clipped, Fault(Wav(32, false, Pcm32(int.MaxValue, int.MaxValue, int.MaxValue, 0))));
        Assert.Equal(FileFault.Clipped, Fault(Wav(32, true, Float32(0, 1, 1.5f, 1))));
        Assert.True(WavRecordingFile.Read(Wav(16, false, Pcm16(0, 32767, 32767, 0)), 1).IsGood);
        Assert.True(WavRecordingFile.Read(Wav(16, false, Pcm16(0, 32766, 32766, 32766)), 1).IsGood);
    }

    [Fact]
    public void Nothing_but_one_step_of_the_converter_is_silent()
    {
        Assert.Equal(FileFault.Silent, Fault(Wav(16, false, Pcm16(0, 0, 0))));
        Assert.Equal(FileFault.Silent, Fault(Wav(16, false, Pcm16(7, 8, 7, 8))));
        Assert.Equal(FileFault.Silent, Fault(Wav(16, false, Pcm16(32767, 32767, 32767))));
        Assert.Equal(FileFault.Silent, Fault(Wav(24, false, Pcm24(0, -1, 0))));
        Assert.Equal(FileFault.Silent, Fault(Wav(32, true, Float32(0.25f, 0.25f))));
        Assert.True(WavRecordingFile.Read(Wav(16, false, Pcm16(0, 2, 0)), 1).IsGood);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(1000.1)]
    [InlineData(double.NaN)]
    public void A_full_scale_that_cannot_be_is_refused(double fullScaleV) =>
        Assert.Equal(FileFault.BadContent, Fault(Wav(16, false, Pcm16(0, 100, 200)), fullScaleV));

    [Fact]
    public void A_sample_that_is_not_a_number_is_refused() =>
        Assert.Equal(FileFault.BadContent, Fault(Wav(32, true, Float32(0, float.NaN, 0.1f))));

    [Fact]
    public void No_bytes_whatever_make_it_throw() =>
        Gen.Select(Gen.Int[0, 60], Gen.Byte.Array[0, 80], Gen.Bool)
            .Sample(
                (kept, noise, floating) =>
                {
                    byte[] file = [.. Wav(floating ? 32 : 24, floating, Pcm24(1, 2, 3, 4, 5, 6, 7, 8))[..kept], .. noise];
                    var read = WavRecordingFile.Read(file, 1);
                    return read.IsGood != read.Problems.Count > 0;
                }
            );
}
