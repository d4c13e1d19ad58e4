using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Studies;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>Reads gauge studies with their readings.</summary>
public sealed class GaugeStudyReader(WorkshopContext db)
{
    /// <summary>The studies, the latest first; one by its number, or all.</summary>
    public async Task<IReadOnlyList<StudyView>> FindAsync(string? number, CancellationToken cancellation)
    {
        var code = number?.Trim().ToUpperInvariant();
        var studies = await db.Set<MeasurementStudy>()
            .AsNoTracking()
            .Where(s => code == null || s.Number == code)
            .OrderByDescending(s => s.Id)
            .ToListAsync(cancellation);
        var ids = studies.ConvertAll(s => s.Id);
        var readings = (
            await db.Set<MeasurementStudyReading>().AsNoTracking().Where(r => ids.Contains(r.StudyId)).ToListAsync(cancellation)
        ).ToLookup(r => r.StudyId);
        return [.. studies.Select(s => new StudyView(s, [.. readings[s.Id]]))];
    }

    /// <summary>Says that a study is not known.</summary>
    public static Refusal Unknown(string number) => Refusal.NotFound(QualitySentences.ThereIsNoGaugeStudy(number));
}
