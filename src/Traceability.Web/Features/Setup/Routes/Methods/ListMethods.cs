using System.Globalization;
using Traceability.Domain.Evidence;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes.Methods;

/// <summary>Every method that a stage of a route may name, as the code of each describes itself.</summary>
public sealed class ListMethods(Microsoft.Extensions.Localization.IStringLocalizer<DeskTexts> texts) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/methods", Handle)
            .Is(Subjects.Routes, "listMethods", "Every stage method with its parameters, what it reads and computes, and its sources.");

    /// <summary>Something that a method reads from the route.</summary>
    /// <param name="Name" example="ringRadiusMm">Its key; a number stands under numbers.</param>
    /// <param name="Unit" example="mm">Its unit; null when it is no number or has none.</param>
    /// <param name="Lower" example="0">The least value; zero itself is not allowed, unless the description says so. Null without
    /// one.</param>
    /// <param name="Upper" example="100">The greatest value, included; null without one.</param>
    /// <param name="Required" example="true">True when a route cannot do without it.</param>
    /// <param name="Description" example="Inner radius of the ring.">What it is for, and what is taken when it is not stated.</param>
    public sealed record MethodParameterAnswer(
        string Name,
        string? Unit,
        decimal? Lower,
        decimal? Upper,
        bool Required,
        string Description
    );

    /// <summary>Something that a method computes.</summary>
    /// <param name="Characteristic" example="ringTensionNm">Its name; {phase}, {file}, {pattern} and {side} stand for what the route
    /// says.</param>
    /// <param name="Unit" example="N/m">Its unit.</param>
    /// <param name="Description" example="Tension of the film.">Equation, symbols and source.</param>
    public sealed record MethodValueAnswer(string Characteristic, string Unit, string Description);

    /// <summary>A stage method.</summary>
    /// <param name="Code" example="ring-drift">The name by which routes name it.</param>
    /// <param name="Title" example="tension and drift on the ring">What it is called.</param>
    /// <param name="Description" example="Resonance on the ring.">What it judges and needs.</param>
    /// <param name="Parameters">What it reads from the route.</param>
    /// <param name="Reads">Characteristics that it looks at: entered at the stage, of earlier stages, of fitted parts.</param>
    /// <param name="Computes">What it can compute.</param>
    /// <param name="Evidence">Kinds of file that it reads.</param>
    /// <param name="Sources">Where its formulas and rules come from.</param>
    public sealed record MethodAnswer(
        string Code,
        string Title,
        string Description,
        IReadOnlyList<MethodParameterAnswer> Parameters,
        IReadOnlyList<string> Reads,
        IReadOnlyList<MethodValueAnswer> Computes,
        IReadOnlyList<string> Evidence,
        IReadOnlyList<string> Sources
    );

    public static JsonOrCsv<Page<MethodAnswer>> Handle(HttpContext http, PageRequest page, ListMethods use) =>
        JsonOrCsv.Of(page.Part(use.All(), m => m.Code));

    /// <summary>All of them, by name.</summary>
    public IReadOnlyList<MethodAnswer> All() => [.. StageMethods.Names.Order(StringComparer.Ordinal).Select(n => Of(StageMethods.Get(n)))];

    private MethodAnswer Of(StageMethod method) =>
        new(
            method.Name,
            texts["Method." + method.Name],
            method.Description.Text,
            [
                .. method.Parameters.Select(p => new MethodParameterAnswer(
                    p.Name,
                    string.IsNullOrEmpty(p.Unit) ? null : p.Unit,
                    p.Lower,
                    p.Upper,
                    p.Required,
                    p.Description
                )),
            ],
            [.. method.Description.Reads.Concat(method.ReadsEarlier).Concat(method.ReadsOfFittedParts).Distinct()],
            [.. method.Description.Computes.Select(c => new MethodValueAnswer(c.Name, c.Unit, method.HowComputed(c.Name) ?? ""))],
            [.. method.Description.Evidence.Select(EvidenceKinds.Code)],
            method.Description.Sources
        );

    /// <summary>The range of a parameter in words: "above 0", "1 to 96".</summary>
    public static string RangeOf(MethodParameter p) =>
        (p.Lower, p.Upper) switch
        {
            (null, null) => "",
            (0, { } upper) when !p.MayBeZeroOrBelow => string.Create(CultureInfo.InvariantCulture, $"> 0, ≤ {upper}"),
            (0, null) => p.MayBeZeroOrBelow ? "≥ 0" : "> 0",
            ({ } lower, null) => string.Create(CultureInfo.InvariantCulture, $"≥ {lower}"),
            ({ } lower, { } upper) => string.Create(CultureInfo.InvariantCulture, $"{lower} – {upper}"),
            (null, { } upper) => string.Create(CultureInfo.InvariantCulture, $"≤ {upper}"),
        };
}
