using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.InstrumentTokens;

/// <summary>The tokens of an instrument, without the tokens themselves.</summary>
public sealed class ListTokens(WorkshopContext db, NameQuery names) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/instruments/{code}/tokens", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.Instruments, "listTokens", "The tokens of an instrument, without the tokens themselves.");

    /// <summary>A token in lists: everything but itself.</summary>
    /// <param name="Id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The token's id, by which it is revoked.</param>
    /// <param name="Instrument" example="RB-1">The instrument that it is for.</param>
    /// <param name="Title" example="bench computer">Where it is kept.</param>
    /// <param name="MadeAt" example="2026-01-31T14:20:00Z">When it was made.</param>
    /// <param name="MadeBy">Who made it.</param>
    /// <param name="Good" example="true">False once it is revoked.</param>
    /// <param name="RevokedAt" example="2026-03-02T09:00:00Z">When it was revoked.</param>
    /// <param name="RevokedBy">Who revoked it.</param>
    /// <param name="RevokeReason" example="the computer was given away">Why.</param>
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

    /// <param name="code" example="RB-1">The instrument's code.</param>
    public static async Task<Results<JsonOrCsv<Page<Row>>, Problem>> HandleAsync(
        string code,
        HttpContext http,
        PageRequest page,
        ListTokens use,
        CancellationToken cancellation
    ) =>
        await use.RunAsync(code, cancellation) is { } rows
            ? JsonOrCsv.Of(page.Part(rows, r => r.Id.ToString()))
            : ProblemAnswers.From(InstrumentByCode.Unknown(code));

    /// <summary>The tokens of an instrument, the latest first; null when there is no such instrument.</summary>
    public async Task<IReadOnlyList<Row>?> RunAsync(string code, CancellationToken cancellation)
    {
        if (await InstrumentByCode.FindAsync(db, code, cancellation) is not { } instrument)
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
}
