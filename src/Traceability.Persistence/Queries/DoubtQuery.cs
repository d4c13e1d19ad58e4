using System.Text.Json;
using Npgsql;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Persistence.Queries;

/// <summary>
/// What was measured on some parts, or on anything inside them, with instruments that were ever found wrong or stopped; and the proofs of
/// these instruments around every such moment, from which <see cref="DoubtfulSpan"/> says what is in doubt. Comes in the round trip of the
/// dossiers; where nothing was ever wrong with an instrument it reads nothing.
/// </summary>
public static class DoubtQuery
{
    /// <summary>
    /// $1 parts. A film lot is a part under the lot's id, so what was measured on it is found in whatever contains the lot. Of checks those
    /// near a fault are taken, and the next good one on either side: a tester that is checked twice a day has thousands. Those that a
    /// correction took the place of are left out.
    /// </summary>
    public const string Sql = """
        with suspect as (
            select instrument_id from calibrations where not passed
            union select instrument_id from instrument_checks where not passed
            union select instrument_id from holds where instrument_id is not null
        ), looked as (
            select id as container_id, id as item_id from unnest($1::uuid[]) as id
            union
            select container_id, item_id from containments where container_id = any($1) and present_until is null
        ), used as materialized (
            select l.container_id, u.part_id, p.serial, p.route_id, a.stage, u.instrument_id, u.instrument_code, u.occurred_at
                as began, e.occurred_at as ended, e.recorded_at,
                (select max(d.recorded_at) from doubt_decisions d where d.part_id = u.part_id and d.instrument_id = u.instrument_id
                    and d.kind = 'Accepted') as accepted_at
            from looked l join instrument_uses u on u.part_id = l.item_id join attempts a on a.id = u.attempt_id
                join attempt_endings e on e.attempt_id = a.id join parts p on p.id = u.part_id
            where u.instrument_id in (select instrument_id from suspect) and e.verdict is not null and not exists (
                select from attempts b join attempt_endings x on x.attempt_id = b.id
                where b.part_id = a.part_id and b.stage = a.stage and b.number > a.number and x.verdict is not null)
        ), concerned as materialized (
            select distinct instrument_id from used
        ), standing_checks as not materialized (
            select c.* from instrument_checks c where not exists (select from instrument_checks n where n.replaces = c.id)
        ), fault as (
            select instrument_id, occurred_at as at from standing_checks where not passed and instrument_id in (select instrument_id
                from concerned)
            union all select instrument_id, calibrated_on::timestamptz from calibrations where not passed
                and instrument_id in (select instrument_id from concerned)
            union all select instrument_id, occurred_at from holds where instrument_id in (select instrument_id from concerned)
        )
        select 'used', to_jsonb(w) from used w
        union all
        select 'calibration', to_jsonb(c) from calibrations c where c.instrument_id in (select instrument_id from concerned)
        union all
        select case when exists (select from hold_releases r where r.hold_id = h.id) then 'lifted' else 'held' end, to_jsonb(h)
            from holds h where h.instrument_id in (select instrument_id from concerned)
        union all
        select 'check', to_jsonb(k) from fault f cross join lateral (
            (select c.* from standing_checks c where c.instrument_id = f.instrument_id and c.passed
                and c.occurred_at < f.at - interval '3 days' order by c.occurred_at desc limit 1)
            union all
            (select c.* from standing_checks c where c.instrument_id = f.instrument_id and c.passed
                and c.occurred_at > f.at + interval '3 days' order by c.occurred_at limit 1)
            union all
            (select c.* from standing_checks c where c.instrument_id = f.instrument_id and c.occurred_at between f.at - interval '3 days'
                and f.at + interval '3 days')
        ) k
        """;

    private sealed record Used(
        Guid ContainerId,
        Guid PartId,
        string Serial,
        Guid RouteId,
        string Stage,
        Guid InstrumentId,
        string InstrumentCode,
        DateTimeOffset Began,
        DateTimeOffset Ended,
        DateTimeOffset RecordedAt,
        DateTimeOffset? AcceptedAt
    );

    /// <summary>The statement for these parts, to be sent in a batch.</summary>
    internal static NpgsqlBatchCommand For(Guid[] partIds) => AboutParts.For(Sql, partIds);

    /// <summary>Reads the answer.</summary>
    internal static async Task<FoundDoubts> ReadAsync(NpgsqlDataReader reader, CancellationToken cancellation)
    {
        var used = new List<Used>();
        var proofs = new List<(string What, Fact Fact)>();
        while (await reader.ReadAsync(cancellation))
        {
            var (what, row) = (reader.GetString(0), reader.GetString(1));
            if (what == "used")
            {
                used.Add(Row<Used>(row));
                continue;
            }

            proofs.Add(
                (
                    what,
                    what switch
                    {
                        "calibration" => Row<Calibration>(row),
                        "check" => Row<InstrumentCheck>(row),
                        _ => Row<Hold>(row),
                    }
                )
            );
        }

        var known = proofs
            .DistinctBy(p => p.Fact.Id)
            .ToLookup(p =>
                p.Fact switch
                {
                    Calibration c => c.InstrumentId,
                    InstrumentCheck c => c.InstrumentId,
                    _ => ((Hold)p.Fact).InstrumentId!.Value,
                }
            );
        return new(
            [
                .. used.Select(u =>
                    (
                        u.ContainerId,
                        u.RouteId,
                        u.InstrumentId,
                        new MeasuredWith(
                            u.PartId,
                            u.Serial,
                            u.Stage,
                            u.Stage,
                            u.InstrumentCode,
                            u.Began,
                            u.Ended,
                            u.RecordedAt,
                            false,
                            u.AcceptedAt
                        )
                    )
                ),
            ],
            known.ToDictionary(k => k.Key, k => Standing(k.Key, [.. k]))
        );
    }

    private static T Row<T>(string json) => JsonSerializer.Deserialize<T>(json, FactJson.Row)!;

    private static InstrumentStanding Standing(Guid id, IReadOnlyList<(string What, Fact Fact)> known) =>
        new(
            new(id, "", "", "", null, null, null, Guid.Empty, default, default),
            StandingCalibrations.Of([.. known.Select(k => k.Fact).OfType<Calibration>()]),
            [.. known.Select(k => k.Fact).OfType<InstrumentCheck>()],
            [.. known.Where(k => k.What == "held").Select(k => (Hold)k.Fact)]
        )
        {
            LiftedHolds = [.. known.Where(k => k.What == "lifted").Select(k => (Hold)k.Fact)],
        };
}

/// <summary>
/// What was read: every use by the part that it is looked at from, with the route that names its stage, and the instruments as far as they
/// matter.
/// </summary>
internal sealed record FoundDoubts(
    IReadOnlyList<(Guid ContainerId, Guid RouteId, Guid InstrumentId, MeasuredWith Measured)> Uses,
    IReadOnlyDictionary<Guid, InstrumentStanding> Instruments
)
{
    /// <summary>
    /// Parts with something that was measured with an instrument that was ever found wrong or stopped; whether it is in doubt their dossier
    /// says.
    /// </summary>
    public IReadOnlySet<Guid> Concerned { get; } = Uses.Select(u => u.ContainerId).ToHashSet();

    /// <summary>What is in doubt in each part, in words.</summary>
    public async Task<ILookup<Guid, InDoubt>> DescribeAsync(Func<Guid, Task<Domain.Routes.Route>> routeOf, WorkshopCalendar calendar)
    {
        var spans = Instruments.ToDictionary(i => i.Key, i => DoubtfulSpan.Of(i.Value, calendar));
        var found = new List<(Guid ContainerId, InDoubt Doubt)>();
        foreach (
            var (container, route, instrument, measured) in Uses.Where(u =>
                spans.TryGetValue(u.InstrumentId, out var s) && u.Measured.DoubtIn(s) is not null
            )
        )
        {
            var title = (await routeOf(route)).Find(measured.Stage)?.Title ?? measured.Stage;
            found.Add((container, (measured with { StageTitle = title }).DoubtInWords(spans[instrument], calendar)!));
        }

        return found.OrderBy(f => f.Doubt.Serial, StringComparer.Ordinal).ToLookup(f => f.ContainerId, f => f.Doubt);
    }
}
