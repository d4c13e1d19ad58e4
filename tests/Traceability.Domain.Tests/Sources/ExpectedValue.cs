using System.Globalization;
using System.Text.Json;

namespace Traceability.Domain.Tests.Sources;

/// <summary>One vendored expected value with its inputs, its tolerance and where it came from.</summary>
public sealed record ExpectedValue(
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
    private static readonly Lazy<IReadOnlyDictionary<string, ExpectedValue>> Vendored = new(() => Read("check-values.json"));
    private static readonly Lazy<IReadOnlyDictionary<string, ExpectedValue>> FromPrint = new(() => Read("printed-values.json"));

    /// <summary>What another library computed.</summary>
    public static IReadOnlyDictionary<string, ExpectedValue> Computed => Vendored.Value;

    /// <summary>What stands in a printed table.</summary>
    public static IReadOnlyDictionary<string, ExpectedValue> Printed => FromPrint.Value;

    public double this[string input] => Inputs.GetProperty(input).GetDouble();

    public int Whole(string input) => Inputs.GetProperty(input).GetInt32();

    public double[] Numbers(string input) => Numbers(Inputs.GetProperty(input));

    public double[][] Rows(string input) => [.. Inputs.GetProperty(input).EnumerateArray().Select(Numbers)];

    /// <summary>Fails unless the result is the expected one: text and truth exactly, numbers one by one within the tolerance.</summary>
    public void Accept(object actual) => Accept(Expected, actual);

    private void Accept(JsonElement expected, object actual)
    {
        switch (expected.ValueKind)
        {
            case JsonValueKind.String:
                Assert.Equal(expected.GetString(), actual);
                break;
            case JsonValueKind.True or JsonValueKind.False:
                Assert.Equal(expected.GetBoolean(), actual);
                break;
            case JsonValueKind.Array:
                object[] several = [.. Assert.IsAssignableFrom<Array>(actual).Cast<object>()];
                JsonElement[] wanted = [.. expected.EnumerateArray()];
                Assert.Equal(wanted.Length, several.Length);
                for (var i = 0; i < wanted.Length; i++)
                    Accept(wanted[i], several[i]);
                break;
            default:
                AcceptNumber(expected.GetDouble(), Convert.ToDouble(actual, CultureInfo.InvariantCulture));
                break;
        }
    }

    private void AcceptNumber(double expected, double actual)
    {
        var allowed =
            Absolute ? Tolerance
            : expected == 0 ? 1e-9
            : Tolerance * Math.Abs(expected);
        Assert.True(
            Math.Abs(actual - expected) <= allowed,
            FormattableString.Invariant($"{Id} {Name}: expected {expected:R}, got {actual:R}")
        );
    }

    private static double[] Numbers(JsonElement array) => [.. array.EnumerateArray().Select(e => e.GetDouble())];

    private static Dictionary<string, ExpectedValue> Read(string file)
    {
        var here = typeof(ExpectedValue).Assembly;
        var resource = here.GetManifestResourceNames().Single(n => n.EndsWith($".Physics.{file}", StringComparison.Ordinal));
        using var document = JsonDocument.Parse(here.GetManifestResourceStream(resource)!);
        return document
            .RootElement.GetProperty("values")
            .EnumerateArray()
            .Select(v =>
            {
                var tolerance = v.GetProperty("tolerance").EnumerateObject().Single();
                return new ExpectedValue(
                    v.GetProperty("id").GetString()!,
                    v.GetProperty("name").GetString()!,
                    v.GetProperty("formula").GetString()!,
                    v.GetProperty("inputs").Clone(),
                    v.GetProperty("expected").Clone(),
                    tolerance.Value.GetDouble(),
                    tolerance.Name == "abs",
                    Source.Of(v)
                );
            })
            .ToDictionary(v => v.Id);
    }
}
