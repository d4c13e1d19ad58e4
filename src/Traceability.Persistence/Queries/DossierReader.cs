using Npgsql;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>Loads dossiers: a part's facts, its route and its surroundings.</summary>
public sealed class DossierReader(WorkshopContext db, RouteShelf routes, WorkshopCalendar? calendar = null)
{
    /// <summary>
    /// A part by serial or carrier, and of a station by code why it is retired: nothing when it is in use, null when it is not known. The
    /// benchmark runs the same statement beside the service.
    /// </summary>
    public const string FindSql = """
        select coalesce((select id from parts where serial = $1), (select part_id from part_standings where carrier_code = $1)),
            (select case d.state when 'Mistake' then null when 'Retired' then d.reason else '' end from stations s left join lateral (
                select state, reason from setup_decisions where subject_id = s.id order by recorded_at desc limit 1) d on true
                where s.code = $2)
        """;

    /// <summary>The dossiers of these parts, by id; unknown ids are left out.</summary>
    public async Task<IReadOnlyDictionary<Guid, Dossier>> LoadAsync(Guid[] partIds, CancellationToken cancellation)
    {
        if (partIds.Length == 0)
        {
            return new Dictionary<Guid, Dossier>();
        }

        return await OneRoundTrip.RunAsync(db, Statements(partIds), reader => ReadAsync(reader, cancellation), cancellation);
    }

    /// <summary>The statements that a dossier is read by.</summary>
    internal static IEnumerable<NpgsqlBatchCommand> Statements(Guid[] partIds) =>
        [PartFactsQuery.For(partIds), PlacementQuery.For(partIds), DoubtQuery.For(partIds)];

    /// <summary>Puts the dossiers together from the answers to <see cref="Statements"/>.</summary>
    internal async Task<IReadOnlyDictionary<Guid, Dossier>> ReadAsync(NpgsqlDataReader reader, CancellationToken cancellation)
    {
        var facts = await PartFactsQuery.ReadAsync(reader, cancellation);
        await reader.NextResultAsync(cancellation);
        var around = await PlacementQuery.ReadAsync(reader, cancellation);
        await reader.NextResultAsync(cancellation);
        var found = await DoubtQuery.ReadAsync(reader, cancellation);
        await reader.CloseAsync();
        var doubts = await found.DescribeAsync(id => routes.GetAsync(db, id, cancellation), calendar ?? WorkshopCalendar.Utc);
        var dossiers = new Dictionary<Guid, Dossier>();
        foreach (var group in facts)
        {
            var part = group.OfType<Part>().First();
            var route = await routes.GetAsync(db, part.RouteId, cancellation);
            dossiers[part.Id] = new(
                part,
                route,
                [.. group],
                around.GetValueOrDefault(part.Id, PartPlacement.None) with
                {
                    InDoubt = [.. doubts[part.Id]],
                }
            );
        }

        return dossiers;
    }

    /// <summary>One dossier, or null.</summary>
    public async Task<Dossier?> LoadAsync(Guid partId, CancellationToken cancellation) =>
        (await LoadAsync([partId], cancellation)).GetValueOrDefault(partId);

    /// <summary>The id of the part with that serial, or now in that carrier; null when there is none.</summary>
    public async Task<Guid?> FindAsync(string serialOrCarrier, CancellationToken cancellation) =>
        (await FindAsync(serialOrCarrier, "", cancellation)).PartId;

    /// <summary>
    /// The same, and how a station stands: null when there is none of that code, empty when it is in use, else why it was retired. What a
    /// record at a bench asks first.
    /// </summary>
    public Task<(Guid? PartId, string? Station)> FindAsync(string serialOrCarrier, string station, CancellationToken cancellation)
    {
        var find = new NpgsqlBatchCommand(FindSql)
        {
            Parameters =
            {
                new() { Value = Plain(serialOrCarrier) },
                new() { Value = Plain(station) },
            },
        };
        return OneRoundTrip.RunAsync<(Guid?, string?)>(
            db,
            [find],
            async reader =>
            {
                await reader.ReadAsync(cancellation);
                return (reader.IsDBNull(0) ? null : reader.GetGuid(0), reader.IsDBNull(1) ? null : reader.GetString(1));
            },
            cancellation
        );

        static string Plain(string code) => code.Trim().ToUpperInvariant();
    }
}
