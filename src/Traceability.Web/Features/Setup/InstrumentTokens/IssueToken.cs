using System.Buffers.Text;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.InstrumentTokens;

/// <summary>
/// Tokens by which an instrument sends readings by itself. A token is shown once, to whoever made it: neither the tables, nor the ledger,
/// nor the answer kept for a repeated key ever holds more than its hash.
/// </summary>
public sealed class IssueToken(WorkshopContext db, Writes writes, NameQuery names) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/instruments/{code}/tokens", IssueToken.ListAsync)
            .For(Role.Lead)
            .Is(Subjects.Instruments, "listTokens", "The tokens of an instrument, without the tokens themselves.");
        api.MapPost("/instruments/{code}/tokens", IssueToken.MakeAsync)
            .For(Role.Lead)
            .Is(
                Subjects.Instruments,
                "issueToken",
                "Make a token by which the instrument sends readings; it is shown in this answer only."
            );
        api.MapPost("/instruments/{code}/tokens/{id:guid}/revoke", IssueToken.RevokeAsync)
            .For(Role.Lead)
            .Is(Subjects.Instruments, "revokeToken", "Revoke a token of an instrument.");
    }

    public sealed record Input(string Title);

    public sealed record RevokeInput(string Reason);

    /// <summary>A token that was just made.</summary>
    public sealed record Made(Guid Id, string Instrument, string Title, DateTimeOffset MadeAt, string Token);

    /// <summary>A token in lists: everything but itself.</summary>
    public sealed record Row(
        Guid Id,
        string Instrument,
        string Title,
        DateTimeOffset MadeAt,
        Who MadeBy,
        bool Good,
        DateTimeOffset? RevokedAt,
        Who? RevokedBy,
        string? RevokeReason
    );

    /// <summary>A token that opens nothing any more.</summary>
    public sealed record Revoked(Guid Id, bool Good);

    public static Task<Results<Recorded<Made>, Problem>> MakeAsync(
        string code,
        Input input,
        SignedIn signedIn,
        IssueToken use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.MakeAsync(code, input, signedIn.Actor, cancellation));

    public static async Task<Results<Table<Page<Row>>, Problem>> ListAsync(
        string code,
        HttpContext http,
        PageRequest page,
        IssueToken use,
        CancellationToken cancellation
    ) =>
        await use.ListAsync(code, cancellation) is { } rows
            ? Csv.Answer(page.Part(rows, r => r.Id.ToString()))
            : ProblemAnswers.From(Unknown(code));

    public static Task<Results<Changed<Revoked>, Problem>> RevokeAsync(
        string code,
        Guid id,
        RevokeInput input,
        SignedIn signedIn,
        IssueToken use,
        Writes writes
    ) => writes.ChangeAsync(cancellation => use.RevokeAsync(code, id, input, signedIn.Actor, cancellation));

    public async Task<Answer<Made>> MakeAsync(string code, Input input, Actor actor, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(input.Title) || input.Title.Length > 120)
        {
            return Refusal.Invalid("title", SetupSentences.SayWhereTheTokenIsKept);
        }

        if (await FindAsync(code, cancellation) is not { } instrument)
        {
            return Unknown(code);
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
        return Answer.CreatedOnce(new Made(token.Id, instrument.Code, token.Title, token.OccurredAt, secret));
    }

    public async Task<Answer<Revoked>> RevokeAsync(string code, Guid id, RevokeInput input, Actor actor, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(input.Reason))
        {
            return Refusal.Invalid("reason", SetupSentences.SayWhyTheTokenIsRevoked);
        }

        if (
            await FindAsync(code, cancellation) is not { } instrument
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
        return Answer.Ok(new Revoked(id, Good: false));
    }

    /// <summary>The tokens of an instrument, the latest first; null when there is no such instrument.</summary>
    public async Task<IReadOnlyList<Row>?> ListAsync(string code, CancellationToken cancellation)
    {
        if (await FindAsync(code, cancellation) is not { } instrument)
        {
            return null;
        }

        var tokens = await db.Set<InstrumentToken>()
            .AsNoTracking()
            .Where(t => t.InstrumentId == instrument.Id)
            .OrderByDescending(t => t.Id)
            .ToListAsync(cancellation);
        var ids = tokens.ConvertAll(t => t.Id);
        var revoked = await db.Set<InstrumentTokenRevocation>()
            .AsNoTracking()
            .Where(r => ids.Contains(r.TokenId))
            .ToDictionaryAsync(r => r.TokenId, cancellation);
        var people = await names.PeopleAsync(tokens.Select(t => t.By).Concat(revoked.Values.Select(r => r.By)), cancellation);
        return
        [
            .. tokens.Select(t =>
                RowOf(t, instrument.Code, revoked.GetValueOrDefault(t.Id), id => people.GetValueOrDefault(id, Who.Nobody))
            ),
        ];
    }

    private static Row RowOf(InstrumentToken t, string code, InstrumentTokenRevocation? r, Func<Guid, Who> who) =>
        new(t.Id, code, t.Title, t.OccurredAt, who(t.By), r is null, r?.OccurredAt, r is null ? null : who(r.By), r?.Reason);

    private static Refusal Unknown(string code) => Refusal.NotFound(SetupSentences.ThereIsNoInstrument(code));

    private async Task<Instrument?> FindAsync(string code, CancellationToken cancellation)
    {
        var known = code.Trim().ToUpperInvariant();
        return await db.Set<Instrument>().AsNoTracking().FirstOrDefaultAsync(i => i.Code == known, cancellation);
    }
}
