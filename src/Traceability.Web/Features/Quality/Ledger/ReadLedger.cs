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

    public sealed record Entry(long Sequence, string Command, string Body, string PreviousHash, string Hash, DateTimeOffset RecordedAt);

    public static async Task<Results<Table<Page<Entry>>, Problem>> HandleAsync(
        string serial,
        HttpContext http,
        PageRequest page,
        ReadLedger use,
        CancellationToken cancellation
    ) =>
        await use.RunAsync(serial, page, cancellation) is { } entries
            ? Csv.Answer(entries)
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
