using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.InstrumentTokens;

/// <summary>Revokes a token: from now on it opens nothing.</summary>
public sealed class RevokeToken(WorkshopContext db, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/instruments/{code}/tokens/{id:guid}/revoke", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.Instruments, "revokeToken", "Revoke a token of an instrument.");

    /// <summary>Why a token is revoked.</summary>
    /// <param name="Reason" example="the computer was given away">Why.</param>
    public sealed record Input(string Reason);

    /// <summary>A token that opens nothing any more.</summary>
    /// <param name="Id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The token's id.</param>
    /// <param name="Good" example="false">Always false.</param>
    public sealed record Output(Guid Id, bool Good);

    /// <param name="code" example="RB-1">The instrument's code.</param>
    /// <param name="id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The token's id.</param>
    public static Task<Results<Changed<Output>, Problem>> HandleAsync(
        string code,
        Guid id,
        Input input,
        SignedIn signedIn,
        RevokeToken use,
        Writes writes
    ) => writes.ChangeAsync(cancellation => use.RunAsync(code, id, input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(string code, Guid id, Input input, Actor actor, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(input.Reason))
        {
            return Refusal.Invalid("reason", SetupSentences.SayWhyTheTokenIsRevoked);
        }

        if (
            await InstrumentByCode.FindAsync(db, code, cancellation) is not { } instrument
            || !await db.Set<InstrumentToken>().AnyAsync(t => t.Id == id && t.InstrumentId == instrument.Id, cancellation)
        )
        {
            return Refusal.NotFound(SetupSentences.InstrumentHasNoToken(code, id));
        }

        if (await db.Set<InstrumentTokenRevocation>().AnyAsync(r => r.TokenId == id, cancellation))
        {
            return Refusal.Conflict(SetupSentences.ThisTokenIsRevokedAlready, RefusalCode.AlreadyDone);
        }

        var stamp = writes.Stamp(actor.PersonId);
        await writes.Book.AppendAsync(
            instrument.Id,
            "revoke-instrument-token",
            [new InstrumentTokenRevocation(stamp.NewId(), id, input.Reason.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt)],
            cancellation
        );
        return Answer.Ok(new Output(id, Good: false));
    }
}
