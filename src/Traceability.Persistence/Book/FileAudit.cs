using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Book;

/// <summary>
/// Checks the kept files - evidence, certificates and their documents, logos - against the digest under which facts name them. The database
/// reckons the digests.
/// </summary>
internal sealed class FileAudit(WorkshopContext db)
{
    private const string NamedSql = """
        select sha256, part_id, 'evidence' as what from evidence
        union all select document_sha256, part_id, 'document of a certificate' from certificates
        union all select pdf_sha256, part_id, 'certificate' from certificates
        union all select logo_sha256, null, 'logo' from workshop_revisions where logo_sha256 is not null
        """;

    /// <summary>All files: those that are missing, those whose bytes were changed, those that no fact names.</summary>
    public async Task<IReadOnlyList<AuditFinding>> CheckAllAsync(CancellationToken cancellation) =>
        Findings(
            await db
                .Database.SqlQueryRaw<string>(
                    $"""
                    with named as ({NamedSql}) select problem as "Value" from (
                        select n.what || ' ' || n.sha256 || ' is missing among the kept files' as problem
                        from (select distinct sha256, what from named) n where not exists (select from stored_files f
                            where f.sha256 = n.sha256)
                        union all select 'the bytes of the kept file ' || f.sha256
                                || ' were changed: their digest is ' || encode(sha256(f.bytes), 'hex')
                        from stored_files f where f.sha256 <> encode(sha256(f.bytes), 'hex')
                        union all select 'the kept file ' || f.sha256 || ' is named by no fact'
                        from stored_files f where not exists (select from named n where n.sha256 = f.sha256)) found order by 1
                    """
                )
                .ToListAsync(cancellation)
        );

    /// <summary>The files that facts about one part name, those of its loads among them.</summary>
    public async Task<IReadOnlyList<AuditFinding>> CheckPartAsync(Guid partId, CancellationToken cancellation) =>
        Findings(
            await db
                .Database.SqlQueryRaw<string>(
                    $$"""
                    with named as (
                        select sha256, what from ({{NamedSql}}) n where n.part_id = {0}
                        union select e.sha256, 'evidence' from evidence e join attempts a on a.load_id = e.load_id where a.part_id = {0})
                    select problem as "Value" from (
                        select n.what || ' ' || n.sha256 || ' is missing among the kept files' as problem
                        from named n where not exists (select from stored_files f where f.sha256 = n.sha256)
                        union all select 'the bytes of the kept file ' || f.sha256
                                || ' were changed: their digest is ' || encode(sha256(f.bytes), 'hex')
                        from named n join stored_files f on f.sha256 = n.sha256 where f.sha256 <> encode(sha256(f.bytes), 'hex')) found
                            order by 1
                    """,
                    partId
                )
                .ToListAsync(cancellation)
        );

    private static List<AuditFinding> Findings(IEnumerable<string> problems) => [.. problems.Select(p => new AuditFinding(null, 0, p))];
}
