using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Stages;
using Traceability.Domain.Values;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// Brings what an attempt that ended was judged on besides its part's own facts: its files, what was inside the part, constants of
/// calibrations.
/// </summary>
public sealed class JudgedOnQuery(WorkshopContext db, DossierReader dossiers)
{
    private readonly EvidenceQuery evidence = new(db);
    private IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>>? constants;

    /// <summary>As it was recorded when the attempt ended, without any later correction.</summary>
    public Task<JudgedOn> AsRecordedAsync(Dossier dossier, AttemptView attempt, CancellationToken cancellation) =>
        OfAsync(
            dossier,
            attempt,
            new Dictionary<Guid, Dossier>(),
            (position, child, moment) => PartInput.Of(position, child.AsOf(moment), true),
            cancellation
        );

    /// <summary>
    /// The same things, with the values that count now; parts in <paramref name="known"/> as given there, others as they are stored.
    /// </summary>
    public Task<JudgedOn> AsItCountsNowAsync(
        Dossier dossier,
        AttemptView attempt,
        IReadOnlyDictionary<Guid, Dossier> known,
        CancellationToken cancellation
    ) => OfAsync(dossier, attempt, known, PartInput.AsJudgedOn, cancellation);

    private async Task<JudgedOn> OfAsync(
        Dossier dossier,
        AttemptView attempt,
        IReadOnlyDictionary<Guid, Dossier> known,
        Func<string, Dossier, DateTimeOffset, PartInput> asInput,
        CancellationToken cancellation
    )
    {
        var (ending, method) = (attempt.Ending!, StageMethods.Get(dossier.Route.Find(attempt.Stage)!.Method));
        var then = dossier.AsOf(ending.RecordedAt);
        var context = new GateContext(ending.OccurredAt, WorkshopCalendar.Utc)
        {
            Inside = method.ReadsInside
                ? await InsideAsync(then, known, (position, child) => asInput(position, child, ending.RecordedAt), cancellation)
                : new Dictionary<string, Input>(),
            CalibrationConstants = method.ReadsCalibrations
                ? await ConstantsAsync(cancellation)
                : new Dictionary<Guid, IReadOnlyDictionary<string, decimal>>(),
        };
        return new(await evidence.FilesOfAsync(then, attempt.Id, cancellation), context);
    }

    private async Task<IReadOnlyDictionary<string, Input>> InsideAsync(
        Dossier then,
        IReadOnlyDictionary<Guid, Dossier> known,
        Func<string, Dossier, PartInput> asInput,
        CancellationToken cancellation
    )
    {
        var present = then.PresentFittings.Values.ToList();
        var children = await dossiers.LoadAsync(
            [.. present.Select(f => f.ChildId).OfType<Guid>().Where(id => !known.ContainsKey(id))],
            cancellation
        );
        var lotIds = present.Select(f => f.LotId).OfType<Guid>().ToList();
        var lots = await db.Set<Lot>().AsNoTracking().Where(l => lotIds.Contains(l.Id)).ToDictionaryAsync(l => l.Id, cancellation);
        return present.ToDictionary(
            f => f.Position,
            f =>
                f.ChildId is { } child
                    ? asInput(f.Position, known.GetValueOrDefault(child) ?? children[child])
                    : (Input)new LotInput(f.Position, lots[f.LotId!.Value], LotState.Released, [], f.Quantity, true)
        );
    }

    private async Task<IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>>> ConstantsAsync(CancellationToken cancellation) =>
        constants ??= (await db.Set<Calibration>().AsNoTracking().Where(c => c.Constants != null).ToListAsync(cancellation)).ToDictionary(
            c => c.Id,
            c => (IReadOnlyDictionary<string, decimal>)c.Constants!
        );
}
