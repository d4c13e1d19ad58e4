namespace Traceability.Domain.Evidence;

/// <summary>A recording of one channel, in volts.</summary>
/// <param name="SampleRateHz">Samples per second.</param>
/// <param name="BitsPerSample">How finely each was written: 16, 24 or 32.</param>
/// <param name="IsFloatingPoint">Whether they were written as floating point numbers.</param>
/// <param name="Volts">The samples in the order of time, volts.</param>
/// <param name="PeakV">The largest magnitude among them, volts.</param>
public sealed record WavRecording(int SampleRateHz, int BitsPerSample, bool IsFloatingPoint, ReadOnlyMemory<float> Volts, double PeakV)
{
    /// <summary>How long it is.</summary>
    public TimeSpan Duration => TimeSpan.FromSeconds((double)Volts.Length / SampleRateHz);
}
