using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>A lot with where it stands.</summary>
public sealed record LotStanding(Lot Lot, LotState State, string? Reason, IReadOnlyList<string> Holds)
{
    /// <summary>Why it was retired; null while it is in use.</summary>
    public string? RetiredBecause { get; init; }
}

/// <summary>Lots with their latest decision and open holds.</summary>
public sealed class LotQuery(WorkshopContext db)
{
    /// <summary>Lots by number; the benchmark runs the same statement beside the service.</summary>
    public const string FindSql = """
        select to_jsonb(l),
            (select to_jsonb(d) from lot_decisions d where d.lot_id = l.id order by d.recorded_at desc, d.id desc limit 1),
            (select coalesce(jsonb_agg(h.reason), '[]') from holds h where h.lot_id = l.id and not exists (select from hold_releases r
                where r.hold_id = h.id)),
            s.reason
        from lots l left join lateral (select state, reason from setup_decisions where subject_id = l.id order by recorded_at desc limit 1)
            d on true left join lateral (select d.reason where d.state = 'Retired') s on true
        where l.number = any($1) and d.state is distinct from 'Mistake'
        """;

    /// <summary>Adds state and holds to some lots.</summary>
    public async Task<IReadOnlyList<LotStanding>> StandingOfAsync(IQueryable<Lot> lots, CancellationToken cancellation)
    {
        var rows = await lots.AsNoTracking()
            .Select(l => new
            {
                Lot = l,
                Decision = db.Set<LotDecision>()
                    .Where(d => d.LotId == l.Id)
                    .OrderByDescending(d => d.RecordedAt)
                    .ThenByDescending(d => d.Id)
                    .FirstOrDefault(),
                Holds = db.Set<Hold>()
                    .Where(h => h.LotId == l.Id && !db.Set<HoldRelease>().Any(r => r.HoldId == h.Id))
                    .Select(h => h.Reason)
                    .ToList(),
                Setup = db.Set<SetupDecision>().Where(d => d.SubjectId == l.Id).OrderByDescending(d => d.RecordedAt).FirstOrDefault(),
            })
            .ToListAsync(cancellation);
        return
        [
            .. rows.Where(r => r.Setup?.State != SetupState.Mistake)
                .Select(r => new LotStanding(r.Lot, r.Decision?.State ?? LotState.Quarantined, r.Decision?.Reason, r.Holds)
                {
                    RetiredBecause = r.Setup is { State: SetupState.Retired } retired ? retired.Reason : null,
                }),
        ];
    }

    /// <summary>The lots with these numbers, in one statement: every fitting asks.</summary>
    public Task<IReadOnlyList<LotStanding>> FindAsync(IReadOnlyCollection<string> numbers, CancellationToken cancellation) =>
        OneRoundTrip.RunAsync<IReadOnlyList<LotStanding>>(
            db,
            [new(FindSql) { Parameters = { new() { Value = numbers.ToArray() } } }],
            async reader =>
            {
                var found = new List<LotStanding>();
                while (await reader.ReadAsync(cancellation))
                {
                    var decision = reader.IsDBNull(1) ? null : Read<LotDecision>(reader, 1);
                    found.Add(
                        new(Read<Lot>(reader, 0), decision?.State ?? LotState.Quarantined, decision?.Reason, Read<List<string>>(reader, 2))
                        {
                            RetiredBecause = reader.IsDBNull(3) ? null : reader.GetString(3),
                        }
                    );
                }

                return found;
            },
            cancellation
        );

    private static T Read<T>(NpgsqlDataReader reader, int column) => JsonSerializer.Deserialize<T>(reader.GetString(column), FactJson.Row)!;
}
