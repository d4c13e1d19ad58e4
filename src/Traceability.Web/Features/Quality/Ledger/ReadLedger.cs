using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Ledger;

/// <summary>
/// The ledger chain of a part (or lot), for anybody who wants to recompute it: <c>Body</c> is the canonical text that was hashed.
/// </summary>
public sealed class ReadLedger(WorkshopContext db) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/ledger/{serial}", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Tracing, "readLedger", "The chain of entries about a part or lot, to be recomputed outside.");

    /// <summary>One entry of the chain.</summary>
    /// <param name="Sequence" example="12">Its place in the chain, from 1.</param>
    /// <param name="Command" example="open-attempt">The command that wrote it.</param>
    /// <param name="Body" example="{&quot;attempt&quot;:{&quot;stage&quot;:&quot;mount&quot;}}">The canonical text that was hashed.</param>
    /// <param name="PreviousHash" example="0000000000000000000000000000000000000000000000000000000000000000">
    /// Hash of the entry before, in hexadecimal; zeros for the first.
    /// </param>
    /// <param name="Hash" example="9f2c5a7d0b1e4c3a8d6f2b7e9a1c4d5e6f708192a3b4c5d6e7f8091a2b3c4d5e">
    /// SHA-256 over the previous hash and the body, in hexadecimal.
    /// </param>
    /// <param name="RecordedAt" example="2026-11-12T07:50:01Z">When it was recorded.</param>
    public sealed record Entry(long Sequence, string Command, string Body, string PreviousHash, string Hash, DateTimeOffset RecordedAt);

    /// <param name="serial" example="US-0034">A part's serial or a lot's number.</param>
    public static async Task<Results<JsonOrCsv<Page<Entry>>, Problem>> HandleAsync(
        string serial,
        HttpContext http,
        PageRequest page,
        ReadLedger use,
        CancellationToken cancellation
    ) =>
        await use.RunAsync(serial, page, cancellation) is { } entries
            ? JsonOrCsv.Of(entries)
            : ProblemAnswers.From(Refusal.NotFound(QualitySentences.ThereIsNoPartOrLot(serial)));

    /// <summary>The entries in the order of the chain; null when there is no such part or lot.</summary>
    public async Task<Page<Entry>?> RunAsync(string serial, PageRequest page, CancellationToken cancellation)
    {
        var code = serial.Trim().ToUpperInvariant();
        var subject =
            await db.Set<Part>().Where(p => p.Serial == code).Select(p => (Guid?)p.Id).FirstOrDefaultAsync(cancellation)
            ?? await db.Set<Lot>().Where(l => l.Number == code).Select(l => (Guid?)l.Id).FirstOrDefaultAsync(cancellation);
        if (subject is null)
        {
            return null;
        }

        var after = page.AfterNumber ?? 0;
        var rows = await db.Set<LedgerEntry>()
            .AsNoTracking()
            .Where(e => e.SubjectId == subject && e.Sequence > after)
            .OrderBy(e => e.Sequence)
            .Select(e => new Entry(e.Sequence, e.Kind, e.Body, e.PreviousHash, e.Hash, e.RecordedAt))
            .Take(page.Limit + 1)
            .ToListAsync(cancellation);
        return page.Cut(rows, e => e.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }
}
