namespace Traceability.Domain.Tests.Stages.AcousticTest.Noise;

/// <summary>Recordings of seeded noise, so that every run sees the same samples.</summary>
internal static class Recording
{
    public const double RateHz = 48_000;

    public static float[] Noise(int count, double sigma = 1e-3, int seed = 5)
    {
        Random random = new(seed);
        double Gaussian() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        return [.. Enumerable.Range(0, count).Select(_ => (float)(sigma * Gaussian()))];
    }
}
