using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Decisions;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;
using static System.FormattableString;

namespace Traceability.Domain.Certificates;

/// <summary>
/// The measured values that a certificate states: all of the unit itself and of the last stage of every part in it; of their earlier
/// stages those that the route marks for the certificate.
/// </summary>
internal static class MeasurementsOfUnit
{
    public static IReadOnlyList<MeasuredStage> Stages(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar) =>
        [.. from part in parts
            from stage in part.Route.Stages
            let pass = part.CountingPass(stage.Code)
            where pass is not null
            let values = ValuesOf(part, stage, pass, facts, calendar)
            where values.Count > 0
            select new MeasuredStage(part.Part.Serial, CertificateBuilder.InWords(part.Part.Kind), stage.Title, calendar.Local(pass.Ending!.OccurredAt), values)];

    /// <summary>One value with its limits and verdict, and who corrected it.</summary>
    public static MeasuredValue ValueOf(ReadingView view, string label, CertificateFacts facts, WorkshopCalendar calendar)
    {
        var r = view.Reading;
        return new(
            label, view.Digits, SymbolOf(r.Unit), r.Lower, r.Upper, r.Nominal,
            r.Lower is null && r.Upper is null ? VerdictWords.ForInformation : view.Met ? VerdictWords.Within : view.Conformity == Conformity.Conditional ? VerdictWords.ConditionalConceded : VerdictWords.Conceded,
            r.ExpandedUncertainty is { } expanded ? Invariant($"± {expanded} (k = 2)") : null, Corrected(view, facts, calendar));
    }

    /// <summary>A value outside its limits, in words.</summary>
    public static string Missed(Dossier part, ReadingView view)
    {
        var characteristic = part.Route.Find(part.Attempts.First(a => a.Id == view.Reading.AttemptId).Stage)?.Characteristic(view.Reading.Characteristic);
        return $"{characteristic?.Label ?? view.Reading.Characteristic} {view.Digits} {SymbolOf(view.Reading.Unit)}, allowed {characteristic?.LimitsInWords()}";
    }

    private static List<MeasuredValue> ValuesOf(Dossier part, Stage stage, AttemptView pass, CertificateFacts facts, WorkshopCalendar calendar)
    {
        var all = part.Part.Kind == PartKinds.Unit || stage.Code == part.Route.Stages[^1].Code;
        var inPatterns = part.Part.Kind == PartKinds.Unit ? PatternsOfUnit.Of(stage).SelectMany(p => p.Characteristics).ToHashSet() : [];
        return
        [
            .. from c in stage.Characteristics
               where (all || c.OnCertificate) && !inPatterns.Contains(c)
               let reading = pass.Reading(c.Name)
               where reading is not null
               select ValueOf(reading, c.Label, facts, calendar),
        ];
    }

    private static string? SymbolOf(string unit) => Units.TryFind(unit, out var known, out _) ? (known.Symbol.Length == 0 ? null : known.Symbol) : unit;

    private static string? Corrected(ReadingView view, CertificateFacts facts, WorkshopCalendar calendar)
    {
        if (view.Corrections.Count == 0)
        {
            return null;
        }

        var before = view.Corrections.Select(c => c.Digits).Prepend(view.Reading.Digits);
        return string.Join("\n", view.Corrections.Zip(before, (c, was) => $"Corrected by {facts.NameOf(c.By)}, {calendar.Say(c.OccurredAt)}: was {was}, {c.Reason}."));
    }
}
