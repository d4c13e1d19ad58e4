using System.Text.Json;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>One vendored expected value with its inputs, its tolerance and where it came from.</summary>
public sealed record CheckValue(
    string Id,
    string Name,
    string Formula,
    JsonElement Inputs,
    JsonElement Expected,
    double Tolerance,
    bool Absolute,
    Source Source
)
{
    private static readonly Lazy<IReadOnlyDictionary<string, CheckValue>> Vendored = new(Read);

    public static IReadOnlyDictionary<string, CheckValue> All => Vendored.Value;

    public double Number(string input) => Inputs.GetProperty(input).GetDouble();

    public int Whole(string input) => Inputs.GetProperty(input).GetInt32();

    public double[] Numbers(string input) => [.. Inputs.GetProperty(input).EnumerateArray().Select(e => e.GetDouble())];

    /// <summary>Fails unless the result is the expected one: text exactly, numbers one by one within the tolerance.</summary>
    public void Accept(object actual)
    {
        switch (Expected.ValueKind)
        {
            case JsonValueKind.String:
            case JsonValueKind.Object:
                Assert.Equal(
                    Expected.ValueKind == JsonValueKind.String ? Expected.GetString() : JsonSerializer.Serialize(Expected),
                    actual
                );
                break;
            case JsonValueKind.Array:
                double[] expected = [.. Expected.EnumerateArray().Select(e => e.GetDouble())],
                    several = Assert.IsType<double[]>(actual);
                Assert.Equal(expected.Length, several.Length);
                Assert.All(expected.Zip(several), pair => AcceptNumber(pair.First, pair.Second));
                break;
            default:
                AcceptNumber(Expected.GetDouble(), Assert.IsType<double>(actual));
                break;
        }
    }

    private void AcceptNumber(double expected, double actual)
    {
        double allowed =
            Absolute ? Tolerance
            : expected == 0 ? 1e-9
            : Tolerance * Math.Abs(expected);
        Assert.True(
            Math.Abs(actual - expected) <= allowed,
            FormattableString.Invariant($"{Id} {Name}: expected {expected:R}, got {actual:R}")
        );
    }

    private static Dictionary<string, CheckValue> Read()
    {
        using Stream stream = Dataset.Open("check-values.json");
        using JsonDocument document = JsonDocument.Parse(stream);
        return document
            .RootElement.GetProperty("values")
            .EnumerateArray()
            .Select(v =>
            {
                JsonProperty tolerance = v.GetProperty("tolerance").EnumerateObject().Single();
                // A value found wrong beyond its own tolerance stays in the file, with what replaces it and why.
                JsonElement source = v.TryGetProperty("corrected", out JsonElement corrected) ? corrected : v;
                return new CheckValue(
                    v.GetProperty("id").GetString()!,
                    v.GetProperty("name").GetString()!,
                    v.GetProperty("formula").GetString()!,
                    v.GetProperty("inputs").Clone(),
                    source.GetProperty("expected").Clone(),
                    tolerance.Value.GetDouble(),
                    tolerance.Name == "abs",
                    Source.Of(v)
                );
            })
            .ToDictionary(v => v.Id);
    }
}
