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
public sealed class DecideOnNonconformity(
    WorkshopContext db,
    Writes writes,
    WorkBench bench,
    PermitQuery permits,
    WorkshopCalendar calendar
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/nonconformities/{id:guid}/disposition", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Nonconformities, "decideNonconformity", "Decide, signed with the PIN.");

    public sealed record Input(
        DispositionKind Kind,
        string Reason,
        string Pin,
        string? ReturnTo = null,
        string? LimitedTo = null,
        DateTimeOffset? OccurredAt = null,
        string? Permit = null
    );

    public sealed record Output(
        Guid Id,
        Guid Nonconformity,
        DispositionKind Kind,
        string? ReturnTo,
        string? LimitedTo,
        string Reason,
        PartAnswer Part
    );

    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        DecideOnNonconformity use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.RunAsync(id, input, signedIn.Actor, inside));

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
