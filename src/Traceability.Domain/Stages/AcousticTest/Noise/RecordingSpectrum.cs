using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using Traceability.Domain.Stages.AcousticTest.Response;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>
/// Power spectrum of a noise recording, by averaging the periodograms of half-overlapping Hann windows.
/// </summary>
/// <remarks>
/// The mean of the recording is taken off first. Sums over the spectrum are rms values in the unit of the recording. Resolution 1.5
/// lines of sample rate / length: at 96 kHz and 32 768 samples 4.4 Hz, so bands below about 30 Hz are read coarsely, which the
/// A-weighting (-39 dB at 31.5 Hz) does not notice. Source: Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70, from memory. Checks:
/// <c>RecordingSpectrumTests</c>.
/// </remarks>
public sealed class RecordingSpectrum
{
    private const int LongestWindow = 32_768;
    private readonly double[] _power;
    private readonly double _lineHz;

    private RecordingSpectrum(double[] power, double lineHz) => (_power, _lineHz) = (power, lineHz);

    /// <summary>Spectrum of a recording.</summary>
    /// <param name="samples">The recording, all finite; at least 256 samples.</param>
    /// <param name="sampleRateHz">Sample rate, Hz; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too short, a rate that is not positive, or NaN.</exception>
    public static RecordingSpectrum Of(ReadOnlySpan<float> samples, double sampleRateHz)
    {
        Require.Positive(sampleRateHz);
        ArgumentOutOfRangeException.ThrowIfLessThan(samples.Length, 256, nameof(samples));
        var length = LongestWindow;
        while (length > samples.Length)
            length /= 2;

        double[] window = [.. Enumerable.Range(0, length).Select(i => 0.5 - 0.5 * Math.Cos(2 * Math.PI * i / length))];
        var mean = 0.0;
        foreach (var sample in samples)
            mean += Require.Finite(sample, nameof(samples)) / samples.Length;

        var power = new double[length / 2 + 1];
        var segments = 0;
        var two = new Complex[length];
        for (var start = 0; start + length <= samples.Length; start += length)
        {
            // Two segments go through one transform, the second as imaginary part; the power of both together is even in frequency.
            var next = start + length / 2;
            var isThere = next + length <= samples.Length;
            for (var i = 0; i < length; i++)
                two[i] = new((samples[start + i] - mean) * window[i], isThere ? (samples[next + i] - mean) * window[i] : 0);
            Fourier.Forward(two, FourierOptions.NoScaling);
            for (var line = 0; line < power.Length; line++)
                power[line] += (MagnitudeSquared(two[line]) + MagnitudeSquared(two[(length - line) % length])) / 2;
            segments += isThere ? 2 : 1;
        }
        var windowPower = window.Sum(w => w * w);
        for (var line = 0; line < power.Length; line++)
            power[line] *= (line == 0 || line == length / 2 ? 1 : 2) / (segments * windowPower * length);
        return new(power, sampleRateHz / length);
    }

    /// <summary>Rms value in a band, the lines at its edges counted in part.</summary>
    /// <param name="lowerHz">Lower edge, Hz; not negative.</param>
    /// <param name="upperHz">Upper edge, Hz; above the lower.</param>
    /// <exception cref="ArgumentOutOfRangeException">Edges that are no band, or NaN.</exception>
    public double RmsIn(double lowerHz, double upperHz) => Math.Sqrt(Sum(lowerHz, upperHz, _ => 1));

    /// <summary>A-weighted rms value from 10 Hz to 20 kHz, or as far as the recording reaches.</summary>
    public double AWeightedRms() => Math.Sqrt(Sum(10, 20_000, FrequencyWeighting.APower));

    /// <summary>Rms values in the one-third-octave bands from 20 Hz as far up as the recording reaches, at most to 20 kHz.</summary>
    public IReadOnlyList<BandVoltage> ThirdOctaves()
    {
        var highestHz = (_power.Length - 1) * _lineHz;
        return
        [
            .. Enumerable
                .Range(-17, 31)
                .Select(x => OctaveBand.At(x, 3))
                .Where(band => band.UpperHz <= highestHz)
                .Select(band => new BandVoltage(band.MidHz, RmsIn(band.LowerHz, band.UpperHz))),
        ];
    }

    private static double MagnitudeSquared(Complex z) => z.Real * z.Real + z.Imaginary * z.Imaginary;

    private double Sum(double lowerHz, double upperHz, Func<double, double> weight)
    {
        Require.Within(upperHz, Require.NotNegative(lowerHz), double.MaxValue);
        var sum = 0.0;
        var first = Math.Max(0, (int)Math.Floor(lowerHz / _lineHz - 0.5));
        for (var line = first; line < _power.Length && (line - 0.5) * _lineHz < upperHz; line++)
        {
            var inside = Math.Min(upperHz, (line + 0.5) * _lineHz) - Math.Max(lowerHz, (line - 0.5) * _lineHz);
            if (inside > 0)
                sum += _power[line] * (inside / _lineHz) * weight(line * _lineHz);
        }
        return sum;
    }
}
