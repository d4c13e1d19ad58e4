using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Traceability.Web.Tests.Contract;

/// <summary>Values and files that satisfy a stage, made from nothing but what its route says.</summary>
internal static class ExampleFiles
{
    /// <summary>The nominal value, else the middle of the limits, else something on the right side of the one limit.</summary>
    public static decimal ValueFor(JsonElement characteristic) =>
        (Number(characteristic, "nominal"), Number(characteristic, "lower"), Number(characteristic, "upper")) switch
        {
            ({ } nominal, _, _) => nominal,
            (_, { } lower, { } upper) => (lower + upper) / 2,
            (_, { } lower, null) => lower * 2,
            (_, null, { } upper) => upper / 2,
            _ => 1,
        };

    /// <summary>The text of a file of that kind; null when this client cannot make one.</summary>
    public static string? For(JsonElement stage, JsonElement evidence, DateTimeOffset started) =>
        evidence.Text("kind") switch
        {
            "climate-log" => SoakLog(Phases(stage), started),
            "frequency-response" => Response(stage.List("parameters.mask"), evidence.Text("name") == "rear" ? RearDownDb(stage) : 0),
            _ => null,
        };

    /// <summary>How long the stage has to stay open.</summary>
    public static int MinutesOpen(JsonElement stage) =>
        (int)Math.Max(Number(stage, "minimumOpenMinutes") ?? 0, Phases(stage).Sum(p => p.At("minDwellMinutes").GetInt32() + 1));

    public static int Largest(JsonElement stage, string list, string name) =>
        stage.List(list).Select(w => w.At(name).GetInt32()).DefaultIfEmpty(0).Max();

    private static IReadOnlyList<JsonElement> Phases(JsonElement stage) =>
        stage.At("parameters").Has("phases") ? stage.List("parameters.phases") : [];

    private static decimal? Number(JsonElement json, string name) =>
        json.Has(name) && json.At(name).ValueKind == JsonValueKind.Number ? json.At(name).GetDecimal() : null;

    private static string SoakLog(IReadOnlyList<JsonElement> phases, DateTimeOffset started)
    {
        var csv = new StringBuilder("time,temperature_c,humidity_pct\n");
        var at = started;
        foreach (var phase in phases)
        {
            for (var minute = 0; minute <= phase.At("minDwellMinutes").GetInt32(); minute++, at = at.AddMinutes(1))
            {
                csv.Append(
                    CultureInfo.InvariantCulture,
                    $"{at.UtcDateTime:yyyy-MM-ddTHH:mm:ssZ},{Number(phase, "temperatureC")},{Number(phase, "humidityPct") ?? 45}\n"
                );
            }
        }

        return csv.ToString();
    }

    /// <summary>How much weaker sound from behind must come out, where the stage computes that.</summary>
    private static decimal RearDownDb(JsonElement stage) =>
        stage.List("characteristics").Where(c => c.Text("name") == "frontToBackDb").Select(ValueFor).FirstOrDefault();

    private static string Response(IReadOnlyList<JsonElement> mask, decimal downDb)
    {
        var csv = new StringBuilder("frequency_hz,level_db\n");
        foreach (var corner in mask)
        {
            csv.Append(
                CultureInfo.InvariantCulture,
                $"{Number(corner, "frequencyHz")},{(Number(corner, "lowerDb") + Number(corner, "upperDb")) / 2 - downDb}\n"
            );
        }

        return csv.ToString();
    }
}
