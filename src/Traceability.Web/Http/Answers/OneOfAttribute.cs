using System.Text.Json;

namespace Traceability.Web.Http.Answers;

/// <summary>Says of a text in a body or an answer that it is one of a closed list of words.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class OneOfAttribute : Attribute
{
    /// <summary>The words of an enumeration, in lower case with hyphens.</summary>
    public OneOfAttribute(Type list)
        : this(list.Name, [.. Enum.GetNames(list).Select(JsonNamingPolicy.KebabCaseLower.ConvertName)]) { }

    /// <summary>These words, under that name.</summary>
    public OneOfAttribute(string name, params string[] words)
    {
        Name = name;
        Words = words;
    }

    /// <summary>What the list is called in the OpenAPI document.</summary>
    public string Name { get; }

    /// <summary>The words.</summary>
    public IReadOnlyList<string> Words { get; }
}
