using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Traceability.Domain.Values;

namespace Traceability.Web.Tests.Pages;

/// <summary>What pages and programs are told alike: every sentence is asked for, is there, and has a place for each of its parts.</summary>
public sealed partial class SentencesTests
{
    private const BindingFlags Hidden = BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly string Web = Path.Combine(Folder(), "../../../src/Traceability.Web");

    private static readonly string Sources = string.Join(
        "\n",
        new[] { "Features", "Hosting", "Http" }
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Web, folder), "*.cs*", SearchOption.AllDirectories))
            .Where(f => !f.EndsWith("Sentences.cs", StringComparison.Ordinal))
            .Select(File.ReadAllText)
    );

    public static TheoryData<string> Readers =>
        [
            .. typeof(Program)
                .Assembly.GetTypes()
                .Where(t => t.GetFields(Hidden).Any(f => f.FieldType == typeof(TextFile)))
                .Select(t => t.FullName!),
        ];

    private static IEnumerable<MethodInfo> Members(string reader) =>
        typeof(Program).Assembly.GetType(reader)!.GetMethods(Hidden).Where(m => m.ReturnType == typeof(string));

    private static string KeyOf(MethodInfo member) => member.IsSpecialName ? member.Name["get_".Length..] : member.Name;

    private static Dictionary<string, string> WordsOf(string reader) =>
        XDocument
            .Load(Path.Combine([Web, .. reader["Traceability.Web.".Length..].Split('.')]) + ".resx")
            .Root!.Elements("data")
            .ToDictionary(d => d.Attribute("name")!.Value, d => d.Element("value")!.Value);

    [Fact]
    public void Every_part_of_the_workshop_has_its_sentences() => Assert.Equal(11, Readers.Count);

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_sentence_asked_for_is_in_the_file_and_every_sentence_in_the_file_is_asked_for(string reader) =>
        Assert.Equal(WordsOf(reader).Keys.Order(StringComparer.Ordinal), Members(reader).Select(KeyOf).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_sentence_is_used_somewhere(string reader) =>
        Assert.All(Members(reader).Select(KeyOf), key => Assert.Matches($@"\b{reader.Split('.')[^1]}\.{key}\b", Sources));

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_sentence_has_a_place_for_every_part_and_says_them_in_their_order(string reader) =>
        Assert.All(
            Members(reader),
            member =>
            {
                var words = WordsOf(reader)[KeyOf(member)];
                object?[] parts = [.. member.GetParameters().Select(Sample)];
                var places = Places()
                    .Matches(words)
                    .Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))
                    .Distinct()
                    .Order();

                Assert.Equal(Enumerable.Range(0, parts.Length), places);
                Assert.Equal(
                    parts.Length == 0 ? words : string.Format(CultureInfo.InvariantCulture, words, parts),
                    member.Invoke(null, parts)
                );
            }
        );

    private static object? Sample(ParameterInfo parameter) =>
        (Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType) switch
        {
            var text when text == typeof(string) => parameter.Name,
            var moment when moment == typeof(DateTimeOffset) => new DateTimeOffset(2026, 11, 25, parameter.Position, 20, 0, TimeSpan.Zero),
            var id when id == typeof(Guid) => new Guid(parameter.Position, 0, 0, new byte[8]),
            var number => Convert.ChangeType(parameter.Position + 3, number, CultureInfo.InvariantCulture),
        };

    [GeneratedRegex(@"(?<!\{)\{([0-9]+)(?::[^{}]*)?\}")]
    private static partial Regex Places();

    private static string Folder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
