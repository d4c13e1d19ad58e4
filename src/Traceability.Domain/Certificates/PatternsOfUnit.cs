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
        [.. from stage in facts.Unit.Route.Stages
            let pass = facts.Unit.CountingPass(stage.Code)
            where pass is not null
            from pattern in Of(stage)
            select new PatternResult(pattern.Name, ValuesOf(pattern, pass, facts, calendar))];

    public static IEnumerable<Pattern> Of(Stage stage) =>
        from need in stage.Evidence
        where need.Kind == EvidenceKind.FrequencyResponse.Code()
        let own = stage.Characteristics.Where(c => c.Name.Contains(need.Name, StringComparison.OrdinalIgnoreCase) && c.Label.Contains(", ", StringComparison.Ordinal)).ToList()
        where own.Count > 0
        select new Pattern(Parted(own[0].Label).Pattern, own);

    private static IReadOnlyList<MeasuredValue> ValuesOf(Pattern pattern, AttemptView pass, CertificateFacts facts, WorkshopCalendar calendar) =>
        [.. from c in pattern.Characteristics
            let reading = pass.Reading(c.Name)
            where reading is not null
            select MeasurementsOfUnit.ValueOf(reading, Parted(c.Label).What, facts, calendar)];

    private static (string What, string Pattern) Parted(string label) => label.LastIndexOf(", ", StringComparison.Ordinal) is var at ? (label[..at], label[(at + 2)..]) : default;
}
