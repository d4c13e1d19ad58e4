using System.Globalization;
using System.Reflection;
using System.Resources;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Tests.Architecture;

namespace Traceability.Domain.Tests.Texts;

/// <summary>Goes through every class that reads sentences of the core, and through every sentence in its file.</summary>
public partial class TextFilesTests
{
    private const BindingFlags Hidden = BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Assembly Core = typeof(Gatekeeper).Assembly;

    private static readonly string Sources = string.Join(
        "\n",
        TheRepository
            .Sources("src", "Traceability.Domain")
            .Where(f => !f.Path.EndsWith("Texts.cs", StringComparison.Ordinal))
            .Select(f => f.Text)
    );

    private static readonly IReadOnlyList<string> Names =
    [
        .. Core.GetTypes().Where(t => t.GetFields(Hidden).Any(f => f.FieldType.Name == "TextFile")).Select(t => t.FullName!),
    ];

    public static TheoryData<string> Readers => [.. Names];

    private static Type Reader(string name) => Core.GetType(name)!;

    // A sentence may also be a member of the one class that says it, which then takes it from the reader's file: every gate rule does.
    private static IEnumerable<MethodInfo> Members(string reader)
    {
        var file = Reader(reader).GetFields(Hidden).Single(f => f.FieldType.Name == "TextFile");
        return Core.GetTypes()
            .Where(t => t.Namespace?.StartsWith(Reader(reader).Namespace!, StringComparison.Ordinal) == true)
            .SelectMany(t => t.GetMethods(Hidden))
            .Where(m => m.ReturnType == typeof(string) && CompiledUses.Reads(m, file));
    }

    private static string Use(MethodInfo member) =>
        member.IsPrivate ? $@"(?<!private static string ){KeyOf(member)}\b" : $@"\b{member.DeclaringType!.Name}\s*\.{KeyOf(member)}\b";

    private static string KeyOf(MethodInfo member) => member.IsSpecialName ? member.Name["get_".Length..] : member.Name;

    private static Dictionary<string, (string Words, string? Comment)> File(string reader)
    {
        var path = TheRepository.At(["src", "Traceability.Domain", .. reader["Traceability.Domain.".Length..].Split('.')]) + ".resx";
        return XDocument
            .Load(path)
            .Descendants("data")
            .ToDictionary(d => d.Attribute("name")!.Value, d => (d.Element("value")!.Value, d.Element("comment")?.Value));
    }

    private static object? Sample(ParameterInfo parameter) =>
        (Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType) switch
        {
            var text when text == typeof(string) || text == typeof(object) => parameter.Name,
            var character when character == typeof(char) => (char)('A' + parameter.Position),
            var moment when moment == typeof(DateTimeOffset) => new DateTimeOffset(2026, 11, 25, parameter.Position, 20, 0, TimeSpan.Zero),
            { IsValueType: true } number when number == typeof(Guid) => new Guid(parameter.Position, 0, 0, new byte[8]),
            { IsPrimitive: true } number => Convert.ChangeType(parameter.Position + 3, number, CultureInfo.InvariantCulture),
            var number when number == typeof(decimal) => parameter.Position + 3.50m,
            _ => null,
        };

    [Fact]
    public void Every_folder_that_speaks_has_a_file_of_its_own() =>
        Assert.Equal(
            [
                "Certificates.CertificateTexts",
                "Codes.CodeTexts",
                "Evidence.EvidenceTexts",
                "Gates.GateTexts",
                "Quality.FilmLots.FilmLotTexts",
                "Quality.Tracing.ProofTexts",
                "Routes.RouteTexts",
                "Scanning.PromptTexts",
                "Stages.AcousticTest.Findings.AcousticTexts",
                "Stages.BoardSet.BoardTexts",
                "Stages.Capsule.CapsuleTexts",
                "Stages.ClimateSoak.SoakTexts",
                "Stages.Diaphragm.TensionTexts",
                "Stages.FilmLot.FilmTexts",
                "Stages.InsulationTest.InsulationTexts",
                "Stages.Methods.StageTexts",
                "Values.NumberTexts",
                "Work.RefusalTexts",
            ],
            Names.Select(name => name["Traceability.Domain.".Length..]).Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_sentence_asked_for_is_in_the_file_and_every_sentence_in_the_file_is_asked_for(string reader) =>
        Assert.Equal(File(reader).Keys.Order(StringComparer.Ordinal), Members(reader).Select(KeyOf).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_sentence_is_used_somewhere_in_the_core(string reader) =>
        Assert.All(Members(reader), member => Assert.Matches(Use(member), Sources));

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_sentence_has_a_place_for_every_part_and_for_no_other(string reader) =>
        Assert.All(
            Members(reader),
            member =>
            {
                var places = Places()
                    .Matches(File(reader)[KeyOf(member)].Words)
                    .Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))
                    .Distinct()
                    .Order();

                Assert.Equal(Enumerable.Range(0, member.GetParameters().Length), places);
            }
        );

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_sentence_says_its_parts_in_the_order_of_its_places_and_numbers_with_a_point(string reader) =>
        Assert.All(
            Members(reader),
            member =>
            {
                object?[] parts = [.. member.GetParameters().Select(Sample)];
                var words = File(reader)[KeyOf(member)].Words;

                Assert.Equal(
                    parts.Length == 0 ? words : string.Format(CultureInfo.InvariantCulture, words, parts),
                    InGermany(() => member.Invoke(null, parts))
                );
            }
        );

    [Theory]
    [MemberData(nameof(Readers))]
    public void The_file_tells_a_translator_what_stands_in_every_place(string reader) =>
        Assert.All(
            Members(reader),
            member =>
                Assert.Equal(
                    member.GetParameters() is { Length: > 0 } parts ? string.Join(", ", parts.Select(p => $"{p.Position} {p.Name}")) : null,
                    File(reader)[KeyOf(member)].Comment
                )
        );

    [Fact]
    public void A_sentence_that_is_in_no_file_is_an_error_and_not_an_empty_line()
    {
        var file = Activator.CreateInstance(
            Core.GetType("Traceability.Domain.Values.TextFile")!,
            Core.GetType("Traceability.Domain.Gates.GateTexts")!
        )!;
        var say = file.GetType().GetMethod("Say", [typeof(string)])!;

        Assert.IsType<MissingManifestResourceException>(
            Assert.Throws<TargetInvocationException>(() => say.Invoke(file, ["NothingOfThatName"])).InnerException
        );
    }

    private static object? InGermany(Func<object?> say)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            return say();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [GeneratedRegex(@"(?<!\{)\{([0-9]+)(?::[^{}]*)?\}")]
    private static partial Regex Places();
}
