using Traceability.Domain.Records;
using Traceability.Domain.Routes.Drafts;
using Traceability.SeedScenario;

namespace Traceability.Web.Features.Setup.Routes.Examples;

/// <summary>
/// The routes that a workshop may begin from: those of the demonstration, which the program carries with it. There is one copy of them, in
/// <c>seed-scenario/routes</c>.
/// </summary>
public static class RouteExamples
{
    /// <summary>One side, one diaphragm.</summary>
    public const string SingleSided = "single-sided";

    /// <summary>Two sides, with patterns.</summary>
    public const string Dual = "dual";

    /// <summary>
    /// The kinds of part that a model has a route for, in the order of the work, each with the letter its serials begin
    /// with.
    /// </summary>
    public static readonly IReadOnlyList<(string Kind, char Letter)> KindsOfAModel =
    [
        (PartKinds.Diaphragm, 'D'),
        (PartKinds.Capsule, 'C'),
        (PartKinds.BoardSet, 'B'),
        (PartKinds.Unit, 'U'),
    ];

    private static readonly IReadOnlyDictionary<string, string> ModelOf = new Dictionary<string, string>
    {
        [SingleSided] = "tarn-1",
        [Dual] = "tarn-2",
    };

    /// <summary>True for a design that there is an example of.</summary>
    public static bool Has(string design) => ModelOf.ContainsKey(design);

    /// <summary>The example of a design and kind of part.</summary>
    public static DraftMap Of(string design, string kind) => Read($"routes/{ModelOf[design]}-{kind}.yaml");

    /// <summary>The example of the route of every film lot.</summary>
    public static DraftMap FilmLot() => Read("routes/any-film-lot.yaml");

    private static DraftMap Read(string resource)
    {
        using var reader = new StreamReader(typeof(DemoScenario).Assembly.GetManifestResourceStream(resource)!);
        return DraftReader.Read(reader.ReadToEnd()) ?? throw new InvalidOperationException($"{resource} is no route");
    }
}
