using Traceability.Domain.Evidence;
using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>
/// The acoustic results of a unit by directional pattern. A route tells its patterns by the names of its responses: what is measured in
/// the pattern <c>cardioid</c> has that word in its name (<c>sensitivityCardioidMvPa</c>) and after the last comma of its label.
/// </summary>
internal static class PatternsOfUnit
{
    /// <summary>A pattern of a stage with what is measured in it.</summary>
    public sealed record Pattern(string Name, IReadOnlyList<Characteristic> Characteristics);

    public static IReadOnlyList<PatternResult> Results(CertificateFacts facts, WorkshopCalendar calendar) =>
        [
            .. from stage in facts.Unit.Route.Stages
            let pass = facts.Unit.CountingPass(stage.Code)
            where pass is not null
            from pattern in Of(stage)
            select new PatternResult(pattern.Name, ValuesOf(pattern, pass, facts, calendar)),
        ];

    public static IEnumerable<Pattern> Of(Stage stage) =>
        from need in stage.Evidence
        where need.Kind == EvidenceKind.FrequencyResponse.Code()
        let own = OwnOf(stage, need.Name)
        where own.Count > 0
        select new Pattern(Parted(own[0].Label).Pattern, own);

    /// <summary>
    /// The pattern that a response was measured in, as the route's labels call it; null when nothing on the route is labelled by it.
    /// </summary>
    public static string? NameOf(Stage stage, string response) =>
        OwnOf(stage, response) is [var first, ..] ? Parted(first.Label).Pattern : null;

    private static IReadOnlyList<Characteristic> OwnOf(Stage stage, string response) =>
        [
            .. stage.Characteristics.Where(c =>
                c.Name.Contains(response, StringComparison.OrdinalIgnoreCase) && c.Label.Contains(", ", StringComparison.Ordinal)
            ),
        ];

    private static IReadOnlyList<MeasuredValue> ValuesOf(
        Pattern pattern,
        AttemptView pass,
        CertificateFacts facts,
        WorkshopCalendar calendar
    ) =>
        [
            .. from c in pattern.Characteristics
            let reading = pass.Reading(c.Name)
            where reading is not null
            select MeasurementsOfUnit.ValueOf(reading, Parted(c.Label).What, facts, calendar),
        ];

    private static (string What, string Pattern) Parted(string label) =>
        label.LastIndexOf(", ", StringComparison.Ordinal) is var at ? (label[..at], label[(at + 2)..]) : default;
}
