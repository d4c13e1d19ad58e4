using Traceability.Documents.Charts;
using Traceability.Domain.Certificates;
using Traceability.Domain.Gates;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Parts.Life;

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
        charts.AddRange(
            ResponsesOfStage
                .Pictures(stage, dossier.Part.Serial, files)
                .Select(r => new ChartPair(ResponseChart.ToSvg(r), ResponseChart.ToSvg(r, ChartSize.Narrow)))
        );
        charts.AddRange(
            files
                .Select(f => SoaksOfUnit.Picture(stage, dossier.Part.Serial, attempt, f, calendar))
                .OfType<SoakRecord>()
                .Select(soak => new ChartPair(SoakChart.ToSvg(soak), SoakChart.ToSvg(soak, ChartSize.Narrow)))
        );
        return charts;
    }
}
