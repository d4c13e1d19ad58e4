namespace Traceability.SeedScenario.History;

/// <summary>Chance that comes out the same for the same name every time, whatever else happens before or at the same time.</summary>
internal sealed class Chance(string name)
{
    private readonly Random random = new(Seed(name));

    public double Normal(double mean, double deviation)
    {
        var (u, v) = (1 - random.NextDouble(), random.NextDouble());
        return mean + deviation * Math.Sqrt(-2 * Math.Log(u)) * Math.Cos(2 * Math.PI * v);
    }

    /// <summary>Normal, but never further than three deviations away.</summary>
    public double Near(double mean, double deviation) => Math.Clamp(Normal(mean, deviation), mean - 3 * deviation, mean + 3 * deviation);

    public double Between(double lower, double upper) => lower + (upper - lower) * random.NextDouble();

    public T Of<T>(IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];

    /// <summary>FNV-1a, because string.GetHashCode changes from run to run.</summary>
    private static int Seed(string name) => (int)name.Aggregate(2166136261u, (hash, c) => unchecked((hash ^ c) * 16777619u));
}
