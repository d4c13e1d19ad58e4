using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Traceability.Web.Http;

/// <summary>How JSON is read and written: camelCase, unknown members refused, nothing missing, enums in lower case.</summary>
public static class JsonRules
{
    /// <summary>The one set of options, for requests, answers and kept answers.</summary>
    public static readonly JsonSerializerOptions Options = Apply(new(JsonSerializerDefaults.Web));

    /// <summary>Reads back an answer of ours, in which whatever was null is not there.</summary>
    public static readonly JsonSerializerOptions OurAnswers = new(Options) { RespectRequiredConstructorParameters = false };

    /// <summary>Puts the rules on a set of options.</summary>
    public static JsonSerializerOptions Apply(JsonSerializerOptions options)
    {
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.RespectNullableAnnotations = true;
        options.RespectRequiredConstructorParameters = true;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.Converters.Add(new PlainTextConverter());
        options.Converters.Add(new NumberTextConverter());
        options.Converters.Add(new UtcConverter());
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        return options;
    }
}

/// <summary>Every text that a client sends: of a length that a person may have typed, and without U+0000, which PostgreSQL cannot keep.</summary>
internal class PlainTextConverter : JsonConverter<string>
{
    protected virtual int MaxLength => 4000;

    public override string? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.String)
        {
            throw new JsonException("a text is expected here");
        }

        var text = reader.GetString()!;
        return text.Length > MaxLength ? throw new JsonException($"a text has at most {MaxLength} characters; this has {text.Length}")
            : text.Contains('\0', StringComparison.Ordinal) ? throw new JsonException("a text may not hold the character U+0000")
            : text;
    }

    public override void Write(Utf8JsonWriter writer, string value, JsonSerializerOptions options) => writer.WriteStringValue(value);
}

/// <summary>A file that travels inside JSON: as long as the body may be.</summary>
internal sealed class FileTextConverter : PlainTextConverter
{
    protected override int MaxLength => int.MaxValue;
}

/// <summary>A number as the client wrote it, with all its digits: 12.50 stays 12.50. May come as a JSON number or as a text.</summary>
public sealed record NumberText(string Text);

internal sealed class NumberTextConverter : JsonConverter<NumberText>
{
    public override NumberText Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType switch
    {
        JsonTokenType.String => new(reader.GetString()!),
        JsonTokenType.Number => new(System.Text.Encoding.UTF8.GetString(reader.HasValueSequence ? System.Buffers.BuffersExtensions.ToArray(reader.ValueSequence) : reader.ValueSpan)),
        _ => throw new JsonException("a number is expected here"),
    };

    public override void Write(Utf8JsonWriter writer, NumberText value, JsonSerializerOptions options) => writer.WriteRawValue(value.Text);
}

internal sealed class UtcConverter : JsonConverter<DateTimeOffset>
{
    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String && reader.TryGetDateTimeOffset(out var time)
            ? time.ToUniversalTime()
            : throw new JsonException("a time is expected here, ISO 8601 with its zone, such as 2026-01-31T14:20:00Z");

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFF'Z'", System.Globalization.CultureInfo.InvariantCulture));
}
