using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>
/// Holds everything that a trace finds now: every part and unit in which the thing in doubt still is, and the lots or the instrument
/// itself. All in one transaction, signed with the PIN.
/// </summary>
public sealed class HoldTraced(WorkshopContext db, TraceParts traces, TraceQuery query, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/quality/trace/holds", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Tracing, "holdTraced", "Hold everything that a trace finds, signed with the PIN.");

    /// <summary>More parts than this are not held at once; a narrower period is asked for.</summary>
    public const int Most = 2000;

    public sealed record Input(
        TraceKind What,
        string Code,
        string Reason,
        string Pin,
        DateTimeOffset? From = null,
        DateTimeOffset? To = null
    );

    /// <summary>What was held. <c>LeftAlone</c> counts what was scrapped, or on hold for the same reason already.</summary>
    public sealed record Output(
        string What,
        string Code,
        string Reason,
        IReadOnlyList<string> Parts,
        IReadOnlyList<string> Lots,
        string? Instrument,
        int LeftAlone
    );

    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Input input,
        SignedIn signedIn,
        HoldTraced use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.RunAsync(input, signedIn.Actor, inside));

    public async Task<Answer<Output>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(input.Reason))
        {
            return Refusal.Invalid("reason", QualitySentences.SayWhyItIsHeld);
        }

        var found = await traces.FindAsync(
            new(input.What, input.Code, input.From?.ToUniversalTime(), input.To?.ToUniversalTime()),
            cancellation
        );
        if (found.Subject is not { } subject)
        {
            return found.Refusal!;
        }

        var rows = await query.RunAsync(subject, TraceQuery.End, null, Most + 1, cancellation);
        if (rows.Count > Most)
        {
            return Refusal.Conflict(QualitySentences.TooManyPartsAreTouched(Most), RefusalCode.TooManyParts);
        }

        var stamp = writes.Stamp(actor.PersonId);
        var reason = input.Reason.Trim() + HoldsOfTrace.MarkOf(subject.Kind, subject.Code);
        var touched = rows.Where(r => r.Present).Select(r => r.PartId).ToArray();
        var parts = await HoldPartsAsync(touched, reason, stamp, cancellation);
        var lots = await HoldLotsAsync(
            subject.Kind is TraceKind.Lot or TraceKind.SupplierLot ? subject.Ids : touched,
            reason,
            stamp,
            cancellation
        );
        var instrument = subject.Kind == TraceKind.Instrument && await HoldInstrumentAsync(subject.Ids[0], reason, stamp, cancellation);
        return parts.Count + lots.Count == 0 && !instrument
            ? Refusal.Conflict(QualitySentences.EverythingIsHeldAlready, RefusalCode.AlreadyDone)
            : Answer.Created(
                new Output(
                    subject.Kind.Code(),
                    subject.Code,
                    reason,
                    parts,
                    lots,
                    instrument ? subject.Code : null,
                    touched.Length - parts.Count
                )
            );
    }

    private async Task<IReadOnlyList<string>> HoldPartsAsync(Guid[] ids, string reason, Stamp stamp, CancellationToken cancellation)
    {
        var open = await writes.Book.OpenAsync(ids, cancellation);
        var held = new List<string>();
        foreach (var part in ids.Select(id => open[id]).Where(p => p.Dossier.Part.Kind != PartKinds.FilmLot))
        {
            if (HoldsOfTrace.Put(part.Dossier, reason, stamp) is { } hold)
            {
                writes.Book.Append(part, "hold", hold);
                held.Add(part.Dossier.Part.Serial);
            }
        }

        return held;
    }

    /// <summary>Holds lots; a film lot that was itself touched is found among the parts, under the same id.</summary>
    private async Task<IReadOnlyList<string>> HoldLotsAsync(Guid[] ids, string reason, Stamp stamp, CancellationToken cancellation)
    {
        var lots = await db.Set<Lot>()
            .AsNoTracking()
            .Where(l => ids.Contains(l.Id) && !Open(reason).Any(h => h.LotId == l.Id))
            .OrderBy(l => l.Id)
            .ToListAsync(cancellation);
        foreach (var lot in lots)
        {
            await writes.Book.AppendAsync(
                lot.Id,
                "hold",
                [new Hold(stamp.NewId(), lot.Id, null, null, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt)],
                cancellation
            );
        }

        return lots.ConvertAll(l => l.Number);
    }

    private async Task<bool> HoldInstrumentAsync(Guid id, string reason, Stamp stamp, CancellationToken cancellation)
    {
        if (await Open(reason).AnyAsync(h => h.InstrumentId == id, cancellation))
        {
            return false;
        }

        await writes.Book.AppendAsync(
            id,
            "hold",
            [new Hold(stamp.NewId(), null, null, id, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt)],
            cancellation
        );
        return true;
    }

    private IQueryable<Hold> Open(string reason) =>
        db.Set<Hold>().Where(h => h.Reason == reason && !db.Set<HoldRelease>().Any(r => r.HoldId == h.Id));
}
