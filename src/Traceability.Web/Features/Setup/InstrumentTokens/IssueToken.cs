using System.Buffers.Text;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.InstrumentTokens;

/// <summary>
/// Makes a token by which an instrument sends readings by itself. It is shown once, to whoever made it: neither the tables, nor the ledger,
/// nor the answer kept for a repeated key ever holds more than its hash.
/// </summary>
public sealed class IssueToken(WorkshopContext db, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/instruments/{code}/tokens", HandleAsync)
            .For(Role.Lead)
            .Is(
                Subjects.Instruments,
                "issueToken",
                "Make a token by which the instrument sends readings; it is shown in this answer only."
            );

    /// <summary>A token to be made.</summary>
    /// <param name="Title" example="bench computer">Where it will be kept, at most 120 characters.</param>
    public sealed record Input(string Title);

    /// <summary>A token that was just made.</summary>
    /// <param name="Id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The token's id, by which it is revoked.</param>
    /// <param name="Instrument" example="RB-1">The instrument that it is for.</param>
    /// <param name="Title" example="bench computer">Where it is kept.</param>
    /// <param name="MadeAt" example="2026-01-31T14:20:00Z">When it was made.</param>
    /// <param name="Token" example="a-long-text-that-is-shown-once">The token itself, shown this once.</param>
    public sealed record Output(Guid Id, string Instrument, string Title, DateTimeOffset MadeAt, string Token);

    /// <param name="code" example="RB-1">The instrument's code.</param>
    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string code,
        Input input,
        SignedIn signedIn,
        IssueToken use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(code, input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(string code, Input input, Actor actor, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(input.Title) || input.Title.Length > 120)
        {
            return Refusal.Invalid("title", SetupSentences.SayWhereTheTokenIsKept);
        }

        if (await InstrumentByCode.FindAsync(db, code, cancellation) is not { } instrument)
        {
            return InstrumentByCode.Unknown(code);
        }

        // 256 random bits in letters that need no escaping.
        var secret = SessionAuthentication.InstrumentPrefix + Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32));
        var stamp = writes.Stamp(actor.PersonId);
        var token = new InstrumentToken(
            stamp.NewId(),
            instrument.Id,
            input.Title.Trim(),
            SessionAuthentication.HashOf(secret),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        await writes.Book.AppendAsync(instrument.Id, "make-instrument-token", [token], cancellation);
        return Answer.CreatedOnce(new Output(token.Id, instrument.Code, token.Title, token.OccurredAt, secret));
    }
}
