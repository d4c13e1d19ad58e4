using System.Collections.Concurrent;
using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Traceability.Web.Http.Description;

/// <summary>What the doc comments say of something: the words, and one example of it.</summary>
public sealed record DocComment(string Words, string? Example);

/// <summary>
/// Reads the files of doc comments that the compiler lays beside the assemblies, when they are first asked for. The framework's own reader
/// passes over the <c>param</c> of positional records, of which bodies and answers are made.
/// </summary>
public static partial class DocComments
{
    private static readonly ConcurrentDictionary<Assembly, IReadOnlyDictionary<string, XElement>> Files = new();

    /// <summary>What a type is.</summary>
    public static string? SummaryOf(Type type) =>
        Find(type, "T:" + NameOf(type))?.Element("summary") is { } summary ? Plain(summary) : null;

    /// <summary>What a member of a record, an enumeration or any other type is.</summary>
    public static DocComment? OfMember(Type type, string name) =>
        ParameterIn(Find(type, "T:" + NameOf(type)), name)
        ?? Summary(Find(type, $"P:{NameOf(type)}.{name}") ?? Find(type, $"F:{NameOf(type)}.{name}"));

    /// <summary>What a parameter of a handler is. Handlers of one name in one class would share what is said of a parameter.</summary>
    public static DocComment? OfParameter(MethodInfo handler, string name) =>
        handler.DeclaringType is { } type
            ? FileOf(type)
                .Where(m => m.Key.StartsWith($"M:{NameOf(type)}.{handler.Name}(", StringComparison.Ordinal))
                .Select(m => ParameterIn(m.Value, name))
                .FirstOrDefault(found => found is not null)
            : null;

    private static DocComment? Summary(XElement? member) =>
        member?.Element("summary") is { } summary ? new(Plain(summary), member.Element("example")?.Value) : null;

    private static DocComment? ParameterIn(XElement? member, string name) =>
        member?.Elements("param").FirstOrDefault(p => p.Attribute("name")?.Value == name) is { } parameter
            ? new(Plain(parameter), parameter.Attribute("example")?.Value)
            : null;

    private static XElement? Find(Type type, string key) => FileOf(type).GetValueOrDefault(key);

    private static IReadOnlyDictionary<string, XElement> FileOf(Type type) => Files.GetOrAdd(type.Assembly, Read);

    private static IReadOnlyDictionary<string, XElement> Read(Assembly assembly)
    {
        var file = Path.ChangeExtension(assembly.Location, ".xml");
        return assembly.GetName().Name!.StartsWith(nameof(Traceability), StringComparison.Ordinal) && File.Exists(file)
            ? XDocument.Load(file).Descendants("member").ToDictionary(m => m.Attribute("name")!.Value)
            : new Dictionary<string, XElement>();
    }

    private static string NameOf(Type type) => (type.IsGenericType ? type.GetGenericTypeDefinition() : type).FullName!.Replace('+', '.');

    /// <summary>The words without their marks: of a reference the last part of its name.</summary>
    private static string Plain(XElement words) => Blanks().Replace(string.Concat(words.Nodes().Select(Plain)), " ").Trim();

    private static string Plain(XNode node) =>
        node switch
        {
            XText text => text.Value,
            XElement { HasAttributes: true, IsEmpty: true } reference => reference.FirstAttribute!.Value.Split('.', ':')[^1],
            XElement inner => string.Concat(inner.Nodes().Select(Plain)),
            _ => "",
        };

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
