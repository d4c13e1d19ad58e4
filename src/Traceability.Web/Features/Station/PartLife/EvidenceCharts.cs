using Traceability.Documents.Charts;
using Traceability.Domain.Certificates;
using Traceability.Domain.Evidence;
using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;
using AcousticCurves = Traceability.Domain.Stages.AcousticTest.AcousticCurves;
using MaskPoint = Traceability.Domain.Certificates.MaskPoint;
using ResponseCurve = Traceability.Domain.Certificates.ResponseCurve;
using ResponsePoint = Traceability.Domain.Certificates.ResponsePoint;

namespace Traceability.Web.Features.Station.PartLife;

/// <summary>One picture in the width of a desk and in that of a telephone; the style sheet shows one of them.</summary>
public sealed record ChartPair(string Wide, string Narrow);

/// <summary>Draws what an attempt's files hold: responses with the mask that judged them, soaks with the tolerance of each phase.</summary>
public sealed class EvidenceCharts(EvidenceQuery evidence, WorkshopCalendar calendar)
{
    /// <summary>The pictures of an attempt as svg elements; none when it has no file that can be drawn.</summary>
    public async Task<IReadOnlyList<ChartPair>> OfAsync(Dossier dossier, AttemptView attempt, CancellationToken cancellation)
    {
        if (dossier.Route.Find(attempt.Stage) is not { } stage || attempt.Evidence.Count == 0)
        {
            return [];
        }

        // A second file under the same name replaced the first.
        var files = (await evidence.FilesOfAsync(dossier, attempt.Id, cancellation)).GroupBy(f => f.Name).Select(g => g.Last()).ToList();
        var charts = new List<ChartPair>();
        if (ResponsesOf(stage, files) is { } responses)
        {
            charts.Add(new(ResponseChart.ToSvg(responses), ResponseChart.ToSvg(responses, ChartSize.Narrow)));
        }

        charts.AddRange(files.Select(f => SoaksOfUnit.Picture(stage, dossier.Part.Serial, f, calendar)).OfType<SoakRecord>().Select(soak => new ChartPair(SoakChart.ToSvg(soak), SoakChart.ToSvg(soak, ChartSize.Narrow))));
        return charts;
    }

    private static ResponseCurve? ResponsesOf(Stage stage, IReadOnlyList<EvidenceFile> files)
    {
        var traces = new List<ResponseTrace>();
        foreach (var file in files.Where(f => f.Kind == EvidenceKind.FrequencyResponse.Code()))
        {
            if (FrequencyResponseFile.Read(file.Bytes) is { IsGood: true } read)
            {
                traces.Add(new(file.Name, [.. AcousticCurves.AsJudged(stage, read.Data).Select(p => new ResponsePoint(p.FrequencyHz, p.LevelDb))]));
            }
        }

        return traces.Count == 0 ? null : new(
            stage.Title, traces, [.. (stage.Parameters.Mask ?? []).Select(c => new MaskPoint((double)c.FrequencyHz, (double)c.LowerDb, (double)c.UpperDb))],
            AcousticCurves.Caption(stage));
    }
}
