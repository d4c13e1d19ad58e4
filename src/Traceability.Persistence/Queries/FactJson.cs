using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Traceability.Persistence.Queries;

/// <summary>How facts look as JSON: as rows come out of PostgreSQL, and as they go into the ledger.</summary>
internal static class FactJson
{
    /// <summary>Rows as <c>to_jsonb</c> gives them: snake_case names, enums by name.</summary>
    public static readonly JsonSerializerOptions Row = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter() },
    };

    /// <summary>
    /// Ledger bodies: camelCase, enums by name, and decimals as texts, because RFC 8785 writes numbers as doubles and would lose
    /// the digits that were entered.
    /// </summary>
    public static readonly JsonSerializerOptions Ledger = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase), new DecimalAsText(), new UtcText() },
    };

    private sealed class DecimalAsText : JsonConverter<decimal>
    {
        public override decimal Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            decimal.Parse(reader.GetString()!, CultureInfo.InvariantCulture);

        public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.ToString(CultureInfo.InvariantCulture));
    }

    private sealed class UtcText : JsonConverter<DateTimeOffset>
    {
        public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.GetDateTimeOffset();

        public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture));
    }
}
