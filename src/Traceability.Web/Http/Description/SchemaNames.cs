using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.OpenApi;

namespace Traceability.Web.Http.Description;

/// <summary>
/// What a shape is called in the description: the record's name without <c>Answer</c>. A record inside a use case whose name says nothing
/// by itself (<c>Input</c>, <c>Output</c>) has the use case's name in front; <c>PageOf</c> stands before what a page lists.
/// </summary>
internal static class SchemaNames
{
    private const string Answer = "Answer";

    /// <summary>Names that say something only together with the use case.</summary>
    private static readonly string[] Incomplete = ["Input", "Output", "Row", "Entry", "Warning", "Finding", "Issued", "PersonAnswer"];

    /// <summary>A number, and what a body is described in place of.</summary>
    private static readonly Type[] Unnamed = [typeof(NumberText), typeof(JsonElement), typeof(Stream)];

    private static readonly ConcurrentDictionary<string, JsonTypeInfo> Named = new();

    /// <summary>The name of a shape; null for what is written where it stands, as a text or a list.</summary>
    public static string? Of(JsonTypeInfo type)
    {
        if (OpenApiOptions.CreateDefaultSchemaReferenceId(type) is null || Unnamed.Contains(type.Type))
        {
            return null;
        }

        var plain = Nullable.GetUnderlyingType(type.Type) ?? type.Type;
        var (name, first) = (NameOf(plain), Named.GetOrAdd(NameOf(plain), type));
        return (Nullable.GetUnderlyingType(first.Type) ?? first.Type) == plain
            ? name
            : throw new InvalidOperationException($"'{name}' would be the name of both {plain} and {first.Type} in the description");
    }

    /// <summary>The type behind a name that was given.</summary>
    public static JsonTypeInfo? TypeOf(string name) => Named.GetValueOrDefault(name);

    private static string NameOf(Type type) =>
        type == typeof(ProblemDocument) ? nameof(Problem)
        : type.IsGenericType ? $"{type.Name.Split('`')[0]}Of{string.Concat(type.GetGenericArguments().Select(NameOf))}"
        : type.DeclaringType is { } useCase && Incomplete.Contains(type.Name) ? useCase.Name + WithoutAnswer(type.Name)
        : WithoutAnswer(type.Name);

    private static string WithoutAnswer(string name) =>
        name.EndsWith(Answer, StringComparison.Ordinal) && name != Answer ? name[..^Answer.Length] : name;
}
