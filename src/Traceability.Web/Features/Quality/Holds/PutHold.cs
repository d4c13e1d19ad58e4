using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>Stops a lot, a part or an instrument, and with it everything that contains it, until the hold is lifted.</summary>
public sealed class PutHold(WorkshopContext db, Writes writes, WorkBench bench, DossierReader dossiers) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/holds", HandleAsync).For(Role.Quality).Is(Subjects.Holds, "putHold", "Put a lot, a part or an instrument on hold.");

    /// <summary>What is put on hold: exactly one of lot, part and instrument is named.</summary>
    /// <param name="Reason" example="pinholes in the film">Why it is held.</param>
    /// <param name="Lot" example="F-2603">A lot's number.</param>
    /// <param name="Part" example="DS-0107">A part's serial, or the carrier that it lies in.</param>
    /// <param name="Instrument" example="CAP-02">An instrument's code.</param>
    /// <param name="OccurredAt" example="2026-11-12T07:50:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(
        string Reason,
        string? Lot = null,
        string? Part = null,
        string? Instrument = null,
        DateTimeOffset? OccurredAt = null
    );

    public static Task<Results<Recorded<HoldAnswer>, Problem>> HandleAsync(Input input, SignedIn signedIn, PutHold use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor, cancellation));

    public async Task<Answer<HoldAnswer>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (string.IsNullOrWhiteSpace(input.Reason))
        {
            return Refusal.Invalid("reason", QualitySentences.SayWhyItIsHeld);
        }

        string?[] named = [input.Lot, input.Part, input.Instrument];
        if (named.Count(n => n is not null) != 1)
        {
            return Refusal.Invalid("hold", QualitySentences.NameExactlyOneToHold);
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var answer = input switch
        {
            { Part: { } serial } => await HoldPartAsync(serial, input.Reason.Trim(), stamp, cancellation),
            { Lot: { } number } => await HoldOtherAsync(
                await LotAsync(number, cancellation),
                QualitySentences.ThereIsNoLot(number),
                id => new(stamp.NewId(), id, null, null, input.Reason.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt),
                cancellation
            ),
            _ => await HoldOtherAsync(
                await InstrumentAsync(input.Instrument!, cancellation),
                QualitySentences.ThereIsNoInstrument(input.Instrument),
                id => new(stamp.NewId(), null, null, id, input.Reason.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt),
                cancellation
            ),
        };
        return answer.Refusal is { } refusal
            ? refusal
            : Answer.Created(HoldAnswer.Of(answer.Hold!, answer.Subject!, null, _ => new(actor.Badge, actor.Name)));
    }

    private async Task<(Hold? Hold, HeldSubject? Subject, Refusal? Refusal)> HoldPartAsync(
        string serial,
        string reason,
        Stamp stamp,
        CancellationToken cancellation
    )
    {
        if (await dossiers.FindAsync(serial, cancellation) is not { } id || await writes.Book.OpenAsync(id, cancellation) is not { } part)
        {
            return (null, null, Refusal.NotFound(QualitySentences.ThereIsNoPartOrCarrier(serial)));
        }

        if (part.Dossier.Part.Kind == PartKinds.FilmLot)
        {
            return (null, null, Refusal.Invalid("part", QualitySentences.FilmLotIsHeldAsLot(part.Dossier.Part.Serial)));
        }

        var hold = new Hold(stamp.NewId(), null, part.Dossier.Part.Id, null, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        writes.Book.Append(part, "hold", hold);
        return (hold, new(part.Dossier.Part.Id, part.Dossier.Part.Serial), null);
    }

    private async Task<(Hold? Hold, HeldSubject? Subject, Refusal? Refusal)> HoldOtherAsync(
        HeldSubject? subject,
        string unknown,
        Func<Guid, Hold> make,
        CancellationToken cancellation
    )
    {
        if (subject is null)
        {
            return (null, null, Refusal.NotFound(unknown));
        }

        var hold = make(subject.Id);
        await writes.Book.AppendAsync(subject.Id, "hold", [hold], cancellation);
        return (hold, subject, null);
    }

    private async Task<HeldSubject?> LotAsync(string number, CancellationToken cancellation)
    {
        var code = number.Trim().ToUpperInvariant();
        return await db.Kept<Lot>()
            .Where(l => l.Number == code)
            .Select(l => new HeldSubject(l.Id, l.Number))
            .FirstOrDefaultAsync(cancellation);
    }

    private async Task<HeldSubject?> InstrumentAsync(string instrument, CancellationToken cancellation)
    {
        var code = instrument.Trim().ToUpperInvariant();
        return await db.Kept<Instrument>()
            .Where(i => i.Code == code)
            .Select(i => new HeldSubject(i.Id, i.Code))
            .FirstOrDefaultAsync(cancellation);
    }
}
