using System.Buffers.Binary;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Noise;

/// <summary>WAV files of one channel made from samples, volts at a full scale of 1 V.</summary>
internal static class Waves
{
    public const int RateHz = 48_000;

    public static byte[] Float(IReadOnlyList<float> samples, int rateHz = RateHz)
    {
        var file = new byte[44 + 4 * samples.Count];
        "RIFF"u8.CopyTo(file);
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(4), file.Length - 8);
        "WAVEfmt "u8.CopyTo(file.AsSpan(8));
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(16), 16);
        BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(20), 3);
        BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(22), 1);
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(24), rateHz);
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(28), rateHz * 4);
        BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(32), 4);
        BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(34), 32);
        "data"u8.CopyTo(file.AsSpan(36));
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(40), 4 * samples.Count);
        for (var i = 0; i < samples.Count; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(file.AsSpan(44 + 4 * i), samples[i]);
        }

        return file;
    }
}
