using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries.Analyses;

namespace Traceability.Persistence.Queries;

/// <summary>
/// A route revision as it stands: approved or not (and by whom, from which day), and how many parts are on it. <c>ApprovedBy</c> is empty
/// while it is proposed; <c>Reason</c> and <c>ApprovedAt</c> belong to an approval that was given here.
/// </summary>
public sealed record RouteStanding(
    Guid Id,
    string Model,
    string Kind,
    int Revision,
    string Author,
    string ApprovedBy,
    DateOnly EffectiveFrom,
    bool Approved,
    string? Reason,
    DateTimeOffset? ApprovedAt,
    int InWork,
    int Finished,
    int Scrapped,
    RouteEndingKind? Ended,
    string? EndedBy,
    string? EndReason
);

/// <summary>Every revision with the parts that run on it, in one statement.</summary>
public sealed class RouteStandingQuery(WorkshopContext db)
{
    /// <summary>$1 model, $2 kind.</summary>
    public const string Sql = """
        select r.id, r.model, r.kind, r.revision, r.author, case r.approved_by when '' then coalesce(p.badge, '') else r.approved_by end,
            coalesce(a.effective_from, r.effective_from), r.approved_by <> '' or a.id is not null, a.reason, a.occurred_at,
            coalesce(n.in_work, 0), coalesce(n.finished, 0), coalesce(n.scrapped, 0), e.kind, q.badge, e.reason
        from route_revisions r
        left join route_approvals a on a.route_id = r.id
        left join people p on p.id = a.by
        left join route_endings e on e.route_id = r.id
        left join people q on q.id = e.by
        left join lateral (
            select (count(*) filter (where not s.finished and s.state <> 'scrapped'))::int as in_work, (count(*) filter (where s.finished
                and s.state <> 'scrapped'))::int as finished,
                (count(*) filter (where s.state = 'scrapped'))::int as scrapped
            from part_standings s where s.route_id = r.id
        ) n on true
        where ($1::text is null or r.model = $1) and ($2::text is null or r.kind = $2)
        order by r.model, r.kind, r.revision desc
        """;

    /// <summary>
    /// How many proposals wait for somebody to approve them; those that a later approved revision has passed over do not.
    /// </summary>
    /// <param name="except">The badge of whom they must not be from, as nobody decides on the own; null to count all.</param>
    /// <param name="cancellation">Ends the wait.</param>
    public Task<int> ProposalsAsync(string? except, CancellationToken cancellation) =>
        db.Set<RouteRevision>()
            .CountAsync(
                r =>
                    r.ApprovedBy == ""
                    && r.Author != except
                    && !db.Set<RouteApproval>().Any(a => a.RouteId == r.Id)
                    && !db.Set<RouteEnding>().Any(e => e.RouteId == r.Id)
                    && !db.Set<RouteRevision>()
                        .Any(x =>
                            x.Model == r.Model
                            && x.Kind == r.Kind
                            && x.Revision > r.Revision
                            && (x.ApprovedBy != "" || db.Set<RouteApproval>().Any(a => a.RouteId == x.Id))
                        ),
                cancellation
            );

    /// <summary>The revisions of a model and kind, or of all, the latest first within each.</summary>
    public Task<IReadOnlyList<RouteStanding>> FindAsync(string? model, string? kind, CancellationToken cancellation) =>
        db.RowsAsync(
            Sql,
            [model, kind],
            r => new RouteStanding(
                r.GetGuid(0),
                r.GetString(1),
                r.GetString(2),
                r.GetInt32(3),
                r.GetString(4),
                r.GetString(5),
                r.GetFieldValue<DateOnly>(6),
                r.GetBoolean(7),
                r.Text(8),
                r.Moment(9),
                r.GetInt32(10),
                r.GetInt32(11),
                r.GetInt32(12),
                r.Text(13) is { } ended ? Enum.Parse<RouteEndingKind>(ended) : null,
                r.Text(14),
                r.Text(15)
            ),
            cancellation
        );
}
