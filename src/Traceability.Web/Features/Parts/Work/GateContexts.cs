using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Stages;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>The contexts in which gates are judged: the moment, the person, and what the stage looks at besides the part.</summary>
public sealed class GateContexts(WorkshopContext db, SlotReader slots, WorkshopCalendar calendar)
{
    /// <summary>The context of a moment, for one person.</summary>
    public GateContext At(DateTimeOffset at, Actor? actor) => new(at, calendar) { Actor = actor };

    /// <summary>
    /// The context in which an attempt ends: what is in its slots, and what its method looks at besides; nothing is read that nobody asks
    /// for.
    /// </summary>
    public async Task<GateContext> EndingAsync(
        Dossier dossier,
        AttemptView attempt,
        DateTimeOffset at,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var stage = dossier.Route.Find(attempt.Stage)!;
        var method = StageMethods.Get(stage.Method);
        var inside =
            stage.Slots.Count > 0 || method.ReadsInside
                ? (await slots.ReadAsync(dossier, [], cancellation)).ByPosition
                : new Dictionary<string, Input>();
        return At(at, actor) with
        {
            Inputs = inside.Where(i => stage.Slot(i.Key) is not null).ToDictionary(),
            Inside = inside,
            CalibrationConstants = method.ReadsCalibrations
                ? await ConstantsAsync(attempt, cancellation)
                : new Dictionary<Guid, IReadOnlyDictionary<string, decimal>>(),
        };
    }

    private async Task<IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>>> ConstantsAsync(
        AttemptView attempt,
        CancellationToken cancellation
    )
    {
        var ids = attempt.Instruments.Select(i => i.CalibrationId).OfType<Guid>().ToList();
        return ConstantsOf(await db.Set<Calibration>().AsNoTracking().Where(c => ids.Contains(c.Id)).ToListAsync(cancellation));
    }

    /// <summary>The constants of calibrations, by calibration.</summary>
    public static IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>> ConstantsOf(IEnumerable<Calibration> calibrations) =>
        calibrations.Where(c => c.Constants is not null).ToDictionary(c => c.Id, c => (IReadOnlyDictionary<string, decimal>)c.Constants!);
}
