using Traceability.Domain.Evidence;
using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.ClimateSoak;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>The climate soaks of a unit and of what is in it, as logged, with the phases found in them.</summary>
public static class SoaksOfUnit
{
    private const int MostSlices = 120;

    /// <summary>
    /// The soak that a log shows under a stage's phases, as it was judged: from the opening to the part's closing. Null when the file is no
    /// readable log, has no line of that time, or the stage asks for none.
    /// </summary>
    /// <param name="stage">The stage with its phases.</param>
    /// <param name="serial">The part that was soaked.</param>
    /// <param name="attempt">The part's attempt at the stage.</param>
    /// <param name="file">The log.</param>
    /// <param name="calendar">The workshop's clock, in which the times are written.</param>
    public static SoakRecord? Picture(Stage stage, string serial, AttemptView attempt, EvidenceFile file, WorkshopCalendar calendar)
    {
        if (
            stage.Parameters.Phases is not { Count: > 0 } phases
            || file.Kind != EvidenceKind.ClimateLog.Code()
            || ClimateLogFile.Read(file.Bytes) is not { IsGood: true, Data: { } log }
        )
        {
            return null;
        }

        var samples = SoakFromLog.SamplesBetween(log.Rows, attempt.Attempt.OccurredAt, attempt.Ending?.OccurredAt);
        if (samples.Count == 0)
        {
            return null;
        }

        var judged = phases.Zip(SoakProgramme.Judge(samples, [.. phases.Select(SoakFromLog.PhaseOf)])).ToList();
        var conclusions = judged.Select(j =>
            CertificateTexts.PhaseInTolerance(Capital(j.First.Name), j.Second.DwellMinutes, j.First.MinDwellMinutes)
        );
        var source = stage.Parameters.ToleranceSource is { } stated ? [CertificateTexts.TolerancesComeFrom(stated)] : Array.Empty<string>();
        return new(
            stage.Title,
            serial,
            [.. Thinned(samples).Select(r => new CertifiedSample(calendar.Local(r.At), r.TemperatureC, r.HumidityPct))],
            [.. judged.Where(j => j.Second.StabilisedAt is not null).Select(j => PhaseOf(j.First, j.Second, calendar))],
            string.Join(" ", conclusions.Concat(source))
        );
    }

    internal static IReadOnlyList<SoakRecord> Pictures(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar) =>
        [
            .. from part in parts
            from stage in part.Route.Stages
            let pass = part.CountingPass(stage.Code)
            where pass is not null
            let log = CertificateFacts.DrawnFilesOf(part, stage).LastOrDefault(e => e.Kind == EvidenceKind.ClimateLog.Code())
            where log is not null && facts.Files.ContainsKey(log.Id)
            select Picture(stage, part.Part.Serial, pass, facts.Files[log.Id], calendar) into picture
            where picture is not null
            select picture,
        ];

    private static string Capital(string name) => name.Length == 0 ? name : char.ToUpperInvariant(name[0]) + name[1..];

    private static CertifiedPhase PhaseOf(SoakPhaseParameters asked, SoakResult found, WorkshopCalendar calendar) =>
        new(
            asked.Name,
            calendar.Local(found.StabilisedAt!.Value),
            calendar.Local(found.DwellEndedAt ?? found.StabilisedAt.Value),
            (double)asked.TemperatureC,
            (double)asked.TemperatureToleranceK,
            (double?)asked.HumidityPct,
            (double?)asked.HumidityTolerancePct
        );

    /// <summary>
    /// Of every slice of a long log the coldest, warmest, driest and dampest line stay: an excursion is never thinned away.
    /// </summary>
    private static IEnumerable<ClimateSample> Thinned(IReadOnlyList<ClimateSample> rows) =>
        rows.Count <= 4 * MostSlices
            ? rows
            : rows.Chunk((rows.Count + MostSlices - 1) / MostSlices)
                .SelectMany(slice =>
                    new[]
                    {
                        slice[0],
                        slice.MinBy(r => r.TemperatureC),
                        slice.MaxBy(r => r.TemperatureC),
                        slice.MinBy(r => r.HumidityPct ?? 0),
                        slice.MaxBy(r => r.HumidityPct ?? 0),
                    }
                        .DistinctBy(r => r.At)
                        .OrderBy(r => r.At)
                );
}
