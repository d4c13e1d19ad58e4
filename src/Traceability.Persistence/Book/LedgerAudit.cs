using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Book;

/// <summary>Something that does not agree, in words; in which chain and at which entry, where it belongs to one.</summary>
public sealed record AuditFinding(Guid? SubjectId, long Sequence, string Problem)
{
    public override string ToString() => SubjectId is { } subject ? $"subject {subject}, entry {Sequence}: {Problem}" : Problem;
}

/// <summary>
/// Recomputes the ledger from the tables and the tables from the ledger: every chain link, every fact named in it against its row, every
/// row against the entries that should name it, every kept file against its digest. It never stops at the first disagreement. What it
/// cannot show is a change after which both sides agree again: a chain cut at its end together with its rows and its head, or a subject
/// that is gone whole.
/// </summary>
public sealed class LedgerAudit(WorkshopContext db)
{
    private readonly ChainAudit chains = new(db);
    private readonly RowAudit rows = new(db);
    private readonly FileAudit files = new(db);

    /// <summary>Everything that does not agree, and how many chains there are.</summary>
    public async Task<(int Chains, IReadOnlyList<AuditFinding> Findings)> CheckAllAsync(
        IProgress<(int Done, int All)>? progress,
        CancellationToken cancellation
    )
    {
        var subjects = await db.Set<LedgerHead>()
            .Select(h => h.SubjectId)
            .Union(db.Set<LedgerEntry>().Select(e => e.SubjectId))
            .Union(db.Set<Part>().Select(p => p.Id))
            .OrderBy(id => id)
            .ToListAsync(cancellation);
        var findings = new List<AuditFinding>();
        var named = new Dictionary<string, long>();
        for (var i = 0; i < subjects.Count; i++)
        {
            findings.AddRange(await chains.CheckAsync(subjects[i], named, cancellation));
            progress?.Report((i + 1, subjects.Count));
        }

        findings.AddRange(await rows.CheckAllAsync(named, cancellation));
        findings.AddRange(await files.CheckAllAsync(cancellation));
        return (subjects.Count, findings);
    }

    /// <summary>Everything that does not agree about one part: its chain, its rows, its files.</summary>
    public async Task<IReadOnlyList<AuditFinding>> CheckPartAsync(Guid partId, CancellationToken cancellation) =>
        [
            .. await chains.CheckAsync(partId, new Dictionary<string, long>(), cancellation),
            .. await rows.CheckPartAsync(partId, cancellation),
            .. await files.CheckPartAsync(partId, cancellation),
        ];
}
