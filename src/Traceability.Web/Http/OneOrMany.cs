using System.Text.Json;

namespace Traceability.Web.Http;

/// <summary>A body that is one thing or a list of things.</summary>
public static class OneOrMany
{
    /// <summary>Reads it under the rules of <see cref="JsonRules"/>; what is wrong with it becomes a 400.</summary>
    public static IReadOnlyList<T> Read<T>(JsonElement body)
    {
        try
        {
            T?[] read =
                body.ValueKind == JsonValueKind.Array
                    ? body.Deserialize<T?[]>(JsonRules.Options)!
                    : [body.Deserialize<T>(JsonRules.Options)];
            T[] whole = [.. read.OfType<T>()];
            return whole.Length == read.Length ? whole : throw new InputException(InputTexts.NullStandsHere);
        }
        catch (JsonException wrong)
        {
            throw new BadHttpRequestException(wrong.Message, wrong);
        }
    }
}
