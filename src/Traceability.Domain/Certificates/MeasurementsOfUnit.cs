using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Certificates;

/// <summary>
/// The measured values that a certificate states: all of the unit itself and of the last stage of every part in it; of their earlier
/// stages those that the route marks for the certificate.
/// </summary>
internal static class MeasurementsOfUnit
{
    public static IReadOnlyList<MeasuredStage> Stages(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar) =>
        [
            .. from part in parts
            from stage in part.Route.Stages
            let pass = part.CountingPass(stage.Code)
            where pass is not null
            let values = ValuesOf(part, stage, pass, facts, calendar)
            where values.Count > 0
            select new MeasuredStage(
                part.Part.Serial,
                PlainWords.OfCode(part.Part.Kind),
                stage.Title,
                calendar.Local(pass.Ending!.OccurredAt),
                values
            ),
        ];

    /// <summary>One value with its limits and verdict, and who corrected it.</summary>
    public static MeasuredValue ValueOf(ReadingView view, string label, CertificateFacts facts, WorkshopCalendar calendar)
    {
        var r = view.Reading;
        return new(
            label,
            view.Digits,
            SymbolOf(r.Unit),
            r.Lower,
            r.Upper,
            r.Nominal,
            r.Lower is null && r.Upper is null ? VerdictWords.ForInformation
                : view.Met ? VerdictWords.Within
                : view.Conformity == Conformity.Conditional ? VerdictWords.ConditionalConceded
                : VerdictWords.Conceded,
            r.ExpandedUncertainty is { } expanded ? CertificateTexts.UncertaintyIs(expanded) : null,
            Corrected(view, facts, calendar)
        );
    }

    /// <summary>A value outside its limits, in words.</summary>
    public static string Missed(Dossier part, ReadingView view)
    {
        var limits = CharacteristicOf(part, view)?.LimitsInWords();
        return limits is null
            ? $"{LabelOf(part, view)} {WithUnit(view.Digits, view.Reading.Unit)}"
            : CertificateTexts.ValueMissesLimits(
                LabelOf(part, view),
                WithUnit(view.Digits, view.Reading.Unit),
                PlainWords.Of(null, null, limits)
            );
    }

    /// <summary>What the route calls a reading.</summary>
    public static string LabelOf(Dossier part, ReadingView view) => CharacteristicOf(part, view)?.Label ?? view.Reading.Characteristic;

    /// <summary>A value with its unit as it is printed: "57 GΩ", "0.9".</summary>
    public static string WithUnit(string digits, string unit) => SymbolOf(unit) is { } symbol ? $"{digits} {symbol}" : digits;

    /// <summary>The printed symbol of a unit; null for what has none.</summary>
    public static string? SymbolOf(string unit) => Units.SymbolOf(unit) is { Length: > 0 } symbol ? symbol : null;

    private static Characteristic? CharacteristicOf(Dossier part, ReadingView view) =>
        part.Route.Find(part.Attempts.First(a => a.Id == view.Reading.AttemptId).Stage)?.Characteristic(view.Reading.Characteristic);

    /// <summary>Every reading that the certificate states, in patterns or without, with where it was taken.</summary>
    public static IEnumerable<(Stage Stage, AttemptView Pass, ReadingView Reading)> Stated(IReadOnlyList<Dossier> parts) =>
        from part in parts
        from stage in part.Route.Stages
        let pass = part.CountingPass(stage.Code)
        where pass is not null
        from c in StatedOf(part, stage)
        let reading = pass.Reading(c.Name)
        where reading is not null
        select (stage, pass, reading);

    private static IEnumerable<Characteristic> StatedOf(Dossier part, Stage stage) =>
        part.Part.Kind == PartKinds.Unit || stage.Code == part.Route.Stages[^1].Code
            ? stage.Characteristics.Where(c => c.OnCertificate || !IsNumberOfAPiece(c))
            : stage.Characteristics.Where(c => c.OnCertificate);

    /// <summary>A count that nothing bounds above tells which piece it is (the board's number in its panel), not how good it is.</summary>
    private static bool IsNumberOfAPiece(Characteristic c) => c is { Unit: "count", Upper: null };

    private static List<MeasuredValue> ValuesOf(
        Dossier part,
        Stage stage,
        AttemptView pass,
        CertificateFacts facts,
        WorkshopCalendar calendar
    )
    {
        var inPatterns = part.Part.Kind == PartKinds.Unit ? PatternsOfUnit.Of(stage).SelectMany(p => p.Characteristics).ToHashSet() : [];
        return
        [
            .. from c in StatedOf(part, stage)
            where !inPatterns.Contains(c)
            let reading = pass.Reading(c.Name)
            where reading is not null
            select ValueOf(reading, c.Label, facts, calendar),
        ];
    }

    private static string? Corrected(ReadingView view, CertificateFacts facts, WorkshopCalendar calendar)
    {
        if (view.Corrections.Count == 0)
        {
            return null;
        }

        var before = view.Corrections.Select(c => c.Digits).Prepend(view.Reading.Digits);
        return string.Join(
            "\n",
            view.Corrections.Zip(
                before,
                (c, was) => CertificateTexts.CorrectedBy(facts.NameOf(c), calendar.SayWithZone(c.OccurredAt), was, c.Reason)
            )
        );
    }
}
