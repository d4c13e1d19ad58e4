using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Stages;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>What recomputing came to: attempts judged again, those of an older version of their method, and what came out otherwise.</summary>
public sealed record Recomputed(int Judged, int OlderMethod, IReadOnlyList<string> Differences);

/// <summary>
/// Judges every closed attempt again, from the readings, files and fittings that it was judged on then, and says where a computed value or a finding
/// that failed it comes out otherwise. Facts are not mended: a difference means that a method changed without its version, or a row was tampered with.
/// </summary>
public sealed class Recomputation(WorkshopContext db, DossierReader dossiers)
{
    private const int Batch = 100;

    private readonly EvidenceQuery evidence = new(db);

    /// <summary>Judges everything again.</summary>
    public async Task<Recomputed> RunAsync(IProgress<(int Done, int All)>? progress, CancellationToken cancellation)
    {
        var total = new Recomputed(0, 0, []);
        var constants = ConstantsOf(await db.Set<Calibration>().AsNoTracking().Where(c => c.Constants != null).ToListAsync(cancellation));
        var ids = await db.Set<Part>().OrderBy(p => p.Id).Select(p => p.Id).ToListAsync(cancellation);
        for (var i = 0; i < ids.Count; i += Batch)
        {
            foreach (var dossier in (await dossiers.LoadAsync([.. ids.Skip(i).Take(Batch)], cancellation)).Values)
            {
                total = await AddAsync(total, dossier, constants, cancellation);
            }

            progress?.Report((Math.Min(i + Batch, ids.Count), ids.Count));
        }

        return total;
    }

    private async Task<Recomputed> AddAsync(Recomputed total, Dossier dossier, IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>> constants, CancellationToken cancellation)
    {
        foreach (var attempt in dossier.Attempts.Where(a => a.Closed))
        {
            if (StageMethods.Find(attempt.Ending!.Method ?? "") is not { } method || method.Version != attempt.Ending.MethodVersion)
            {
                total = total with { OlderMethod = total.OlderMethod + 1 };
                continue;
            }

            var differences = await DifferencesAsync(dossier, attempt, method, constants, cancellation);
            total = new(total.Judged + 1, total.OlderMethod, [.. total.Differences, .. differences]);
        }

        return total;
    }

    private async Task<List<string>> DifferencesAsync(
        Dossier dossier, AttemptView attempt, StageMethod method, IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>> constants, CancellationToken cancellation)
    {
        var (ending, stage) = (attempt.Ending!, dossier.Route.Find(attempt.Stage)!);
        var then = AsOf(dossier, ending.RecordedAt);
        var files = await evidence.FilesOfAsync(then, attempt.Id, cancellation);
        var inside = method.ReadsInside ? await InsideAsync(then, ending.RecordedAt, cancellation) : new Dictionary<string, Input>();
        var context = new GateContext(ending.OccurredAt, WorkshopCalendar.Utc) { Inside = inside, CalibrationConstants = constants };
        var outcome = method.Judge(StageInputs.Of(then, then.Attempts.First(a => a.Id == attempt.Id), stage, files, context, ending.OccurredAt));
        var what = $"{dossier.Part.Serial} {attempt.Stage} {attempt.Attempt.Number}";
        if (outcome.Unreadable is { } unreadable)
        {
            return [$"{what}: {unreadable}"];
        }

        var stored = attempt.Readings.Where(r => r.Reading.Source == ReadingSource.Computed).ToDictionary(r => r.Reading.Characteristic, r => r.Reading.Digits);
        var again = outcome.Computed.ToDictionary(c => c.Characteristic, c => c.Digits);
        List<string> differences =
        [
            .. stored.Keys.Union(again.Keys).Where(name => stored.GetValueOrDefault(name) != again.GetValueOrDefault(name))
                .Select(name => $"{what}: {name} stored as {stored.GetValueOrDefault(name, "nothing")}, computed again {again.GetValueOrDefault(name, "nothing")}"),
        ];
        if (outcome.Findings.Any(f => f.Fails) != ending.FailedByFinding)
        {
            differences.Add($"{what}: {(ending.FailedByFinding ? "failed by a finding then, by none now" : "failed by no finding then, by one now")}");
        }

        return differences;
    }

    private async Task<IReadOnlyDictionary<string, Input>> InsideAsync(Dossier then, DateTimeOffset moment, CancellationToken cancellation)
    {
        var present = then.PresentFittings.Values.ToList();
        var children = await dossiers.LoadAsync([.. present.Select(f => f.ChildId).OfType<Guid>()], cancellation);
        var lotIds = present.Select(f => f.LotId).OfType<Guid>().ToList();
        var lots = await db.Set<Lot>().AsNoTracking().Where(l => lotIds.Contains(l.Id)).ToDictionaryAsync(l => l.Id, cancellation);
        return present.ToDictionary(f => f.Position, f => f.ChildId is { } child
            ? PartInput.Of(f.Position, AsOf(children[child], moment), true)
            : (Input)new LotInput(f.Position, lots[f.LotId!.Value], LotState.Released, [], f.Quantity, true));
    }

    private static Dossier AsOf(Dossier dossier, DateTimeOffset moment) => new(dossier.Part, dossier.Route, [.. dossier.Facts.Where(f => f.RecordedAt <= moment)], dossier.Around);

    private static Dictionary<Guid, IReadOnlyDictionary<string, decimal>> ConstantsOf(IEnumerable<Calibration> calibrations) =>
        calibrations.ToDictionary(c => c.Id, c => (IReadOnlyDictionary<string, decimal>)c.Constants!);
}
