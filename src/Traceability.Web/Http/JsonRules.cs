using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Traceability.Web.Http;

/// <summary>
/// How JSON is read and written: camelCase, unknown members refused, nothing missing, null written as null, enums in lower case.
/// </summary>
public static class JsonRules
{
    /// <summary>The one set of options, for requests, answers and kept answers.</summary>
    public static readonly JsonSerializerOptions Options = Apply(new(JsonSerializerDefaults.Web));

    /// <summary>Reads back an answer of ours; one that was kept before nulls were written lacks whatever was null.</summary>
    public static readonly JsonSerializerOptions OurAnswers = new(Options) { RespectRequiredConstructorParameters = false };

    /// <summary>Puts the rules on a set of options.</summary>
    public static JsonSerializerOptions Apply(JsonSerializerOptions options)
    {
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.RespectNullableAnnotations = true;
        options.RespectRequiredConstructorParameters = true;
        options.AllowDuplicateProperties = false;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.TypeInfoResolver = (options.TypeInfoResolver ?? new DefaultJsonTypeInfoResolver()).WithAddedModifier(PlainInput.Require);
        options.Converters.Add(new NumberTextConverter());
        options.Converters.Add(new UtcConverter());
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        return options;
    }
}

/// <summary>A number as the client wrote it, with all its digits: 12.50 stays 12.50. May come as a JSON number or as a text.</summary>
public sealed record NumberText(string Text);

internal sealed class NumberTextConverter : JsonConverter<NumberText>
{
    public override NumberText Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType switch
        {
            JsonTokenType.String => new(reader.GetString()!),
            JsonTokenType.Number => new(
                System.Text.Encoding.UTF8.GetString(
                    reader.HasValueSequence ? System.Buffers.BuffersExtensions.ToArray(reader.ValueSequence) : reader.ValueSpan
                )
            ),
            _ => throw new InputException(InputTexts.ANumberIsExpected),
        };

    public override void Write(Utf8JsonWriter writer, NumberText value, JsonSerializerOptions options)
    {
        if (value.Text.StartsWith('>'))
        {
            writer.WriteStringValue(value.Text);
            return;
        }

        writer.WriteRawValue(value.Text);
    }
}

internal sealed class UtcConverter : JsonConverter<DateTimeOffset>
{
    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String && reader.TryGetDateTimeOffset(out var time) && time.UtcDateTime.Year is >= 1950 and < 2200
            ? time.ToUniversalTime()
            : throw new InputException(InputTexts.ATimeIsExpected);

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(
            value.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFF'Z'", System.Globalization.CultureInfo.InvariantCulture)
        );
}
