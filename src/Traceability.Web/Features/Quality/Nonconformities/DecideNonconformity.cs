using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Nonconformities;

/// <summary>The quality lead decides on a nonconformity and signs with the PIN.</summary>
public sealed class DecideNonconformity(WorkshopContext db, Writes writes, WorkBench bench, PermitQuery permits, WorkshopCalendar calendar)
    : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/nonconformities/{id:guid}/disposition", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Nonconformities, "decideNonconformity", "Decide, signed with the PIN.");

    /// <summary>The decision, signed with the PIN.</summary>
    /// <param name="Kind" example="rework">What becomes of the part.</param>
    /// <param name="Reason" example="tension can be corrected">Why.</param>
    /// <param name="Pin" example="162738">The PIN of whoever signs.</param>
    /// <param name="ReturnTo" example="coarse-tune">For rework and repair: the stage that it goes back to, by its code.</param>
    /// <param name="LimitedTo" example="US-0034">For a concession: what it is limited to, in words.</param>
    /// <param name="OccurredAt" example="2026-11-12T11:00:00Z">When it happened; now, when it is left out.</param>
    /// <param name="Permit" example="CON-0003">For a concession: the number of one given beforehand that it rests on.</param>
    /// <param name="AloneBecause" example="I work alone this month">
    /// Why one person does what two should; needed where the workshop works single-handed and the same person built the part.
    /// </param>
    public sealed record Input(
        DispositionKind Kind,
        string Reason,
        string Pin,
        string? ReturnTo = null,
        string? LimitedTo = null,
        DateTimeOffset? OccurredAt = null,
        string? Permit = null,
        string? AloneBecause = null
    );

    /// <summary>The decision, and the part as it is now.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The decision's id.</param>
    /// <param name="Nonconformity" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c02">The nonconformity's id.</param>
    /// <param name="Kind" example="rework">What becomes of the part.</param>
    /// <param name="ReturnTo" example="coarse-tune">The stage that it goes back to; null when it does not.</param>
    /// <param name="LimitedTo" example="US-0034">What a concession is limited to; null for other decisions.</param>
    /// <param name="Reason" example="tension can be corrected">Why.</param>
    /// <param name="Part">The part as it is now.</param>
    public sealed record Output(
        Guid Id,
        Guid Nonconformity,
        DispositionKind Kind,
        string? ReturnTo,
        string? LimitedTo,
        string Reason,
        PartAnswer Part
    );

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c02">The nonconformity's id.</param>
    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        DecideNonconformity use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.RunAsync(id, input, signedIn.Actor.Alone(input.AloneBecause), inside));

    public async Task<Answer<Output>> RunAsync(Guid nonconformityId, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        var partId = await db.Set<Nonconformity>()
            .Where(n => n.Id == nonconformityId)
            .Select(n => (Guid?)n.PartId)
            .FirstOrDefaultAsync(cancellation);
        if (partId is null)
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoNonconformity(nonconformityId));
        }

        var part = (await writes.Book.OpenAsync(partId.Value, cancellation))!;
        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var (permit, unknown) = await PermitAsync(input.Permit, partId.Value, stamp, cancellation);
        if (unknown is not null)
        {
            return unknown;
        }

        var decision = Dispositions.Decide(
            part.Dossier,
            nonconformityId,
            input.Kind,
            input.ReturnTo,
            input.LimitedTo,
            input.Reason,
            actor,
            stamp,
            permit
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "decide-nonconformity", decision.Facts);
        var d = decision.Value!;
        return Answer.Created(new Output(d.Id, d.NonconformityId, d.Kind, d.ReturnTo, d.LimitedTo, d.Reason, bench.AnswerOf(part.Dossier)));
    }

    /// <summary>The permit named, locked, so that two decisions at once do not both take the last part of it.</summary>
    private async Task<(PermitUse? Permit, Refusal? Unknown)> PermitAsync(
        string? number,
        Guid partId,
        Stamp stamp,
        CancellationToken cancellation
    )
    {
        if (string.IsNullOrWhiteSpace(number))
        {
            return (null, null);
        }

        var code = number.Trim().ToUpperInvariant();
        if (
            await db.Set<ConcessionPermit>().Where(p => p.Number == code).Select(p => (Guid?)p.Id).FirstOrDefaultAsync(cancellation)
            is not { } id
        )
        {
            return (null, Refusal.NotFound(QualitySentences.ThereIsNoConcession(number)));
        }

        await writes.Book.LockAsync(id, cancellation);
        var standing = (await permits.FindAsync(code, cancellation))[0];
        return (
            new(standing, await permits.LotIsInsideAsync(standing.Permit, partId, cancellation), calendar.DayOf(stamp.OccurredAt)),
            null
        );
    }
}
