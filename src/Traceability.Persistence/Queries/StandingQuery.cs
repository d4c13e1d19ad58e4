using Npgsql;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Standings;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>A part as it is now, with how it left use or the house; <c>Finished</c>: every stage of its route is passed.</summary>
public sealed record PartNow(Guid Id, string Serial, Standing Standing, Exit Exit, bool Finished);

/// <summary>
/// What many parts are now, in two round trips however many they are. What a settled part is (finished, fitted, shipped, scrapped) follows
/// from the kept standings and from what surrounds it; only of the few that are in flight the whole dossier is read, to ask their gates.
/// Both ways end in <see cref="Standing.Of(StandingGrounds)"/>.
/// </summary>
public sealed class StandingQuery(WorkshopContext db, DossierReader dossiers)
{
    private static readonly string KeptSql = $"""
        select p.id, p.serial, p.kind, s.state, s.finished, s.open_attempt_id is not null,
            case when p.kind = '{PartKinds.Unit}' or s.state = 'scrapped' then {PlacementQuery.ExitSql("p.id")}::text end
        from parts p join part_standings s on s.part_id = p.id where p.id = any($1)
        """;

    private const string HoldsSql =
        "select h.part_id, h.reason from holds h where h.part_id = any($1) and not exists (select from hold_releases r where r.hold_id"
        + " = h.id) order by h.recorded_at, h.id";

    private sealed record Kept(Guid Id, string Serial, string Kind, PartState State, bool Finished, bool Open, Exit Exit)
    {
        /// <summary>True when no gate has a say in what it is.</summary>
        public bool IsSettled =>
            State is PartState.Shipped or PartState.Scrapped or PartState.Fitted
            || (Finished && !Open && State is (PartState.Finished or PartState.OnHold));
    }

    /// <summary>What these parts are at the moment of the context; unknown ids are left out.</summary>
    public async Task<IReadOnlyDictionary<Guid, PartNow>> OfAsync(Guid[] partIds, GateContext context, CancellationToken cancellation)
    {
        if (partIds.Length == 0)
        {
            return new Dictionary<Guid, PartNow>();
        }

        var (kept, holds, around, doubtful) = await OneRoundTrip.RunAsync(
            db,
            [AboutParts.For(KeptSql, partIds), AboutParts.For(HoldsSql, partIds), PlacementQuery.For(partIds), DoubtQuery.For(partIds)],
            async reader =>
            {
                var parts = await KeptAsync(reader, cancellation);
                await reader.NextResultAsync(cancellation);
                var held = await HoldsAsync(reader, cancellation);
                await reader.NextResultAsync(cancellation);
                var placements = await PlacementQuery.ReadAsync(reader, cancellation);
                await reader.NextResultAsync(cancellation);
                return (parts, held, placements, await DoubtQuery.ReadAsync(reader, cancellation));
            },
            cancellation
        );
        var inFlight = await dossiers.LoadAsync(
            [.. kept.Where(k => !k.IsSettled || doubtful.Concerned.Contains(k.Id)).Select(k => k.Id)],
            cancellation
        );
        return kept.ToDictionary(
            k => k.Id,
            k =>
                inFlight.TryGetValue(k.Id, out var dossier)
                    ? new PartNow(k.Id, k.Serial, Standing.Of(dossier, context), dossier.Exit, k.Finished)
                    : Settled(k, [.. holds[k.Id]], around.GetValueOrDefault(k.Id, PartPlacement.None))
        );
    }

    private static PartNow Settled(Kept k, IReadOnlyList<string> holds, PartPlacement around)
    {
        var grounds = new StandingGrounds
        {
            IsUnit = k.Kind == PartKinds.Unit,
            FittedIn = around.FittedInSerial,
            Holds = [.. holds, .. StandingGrounds.Said(around, InsideProblemKind.Hold)],
            Quarantines = [.. StandingGrounds.Said(around, InsideProblemKind.Quarantine)],
            Nonconformities = [.. StandingGrounds.Said(around, InsideProblemKind.Nonconformity)],
        }.Leaving(k.Exit, around.Outermost);
        return new(k.Id, k.Serial, Standing.Of(grounds), grounds.Exit, k.Finished);
    }

    private static async Task<IReadOnlyList<Kept>> KeptAsync(NpgsqlDataReader reader, CancellationToken cancellation)
    {
        var rows = new List<Kept>();
        while (await reader.ReadAsync(cancellation))
        {
            var exit = await reader.IsDBNullAsync(6, cancellation) ? null : reader.GetString(6);
            rows.Add(
                new(
                    reader.GetGuid(0),
                    reader.GetString(1),
                    reader.GetString(2),
                    Words.PartStateOf(reader.GetString(3)),
                    reader.GetBoolean(4),
                    reader.GetBoolean(5),
                    PlacementQuery.ExitOf(exit)
                )
            );
        }

        return rows;
    }

    private static async Task<ILookup<Guid, string>> HoldsAsync(NpgsqlDataReader reader, CancellationToken cancellation)
    {
        var rows = new List<(Guid Part, string Reason)>();
        while (await reader.ReadAsync(cancellation))
        {
            rows.Add((reader.GetGuid(0), reader.GetString(1)));
        }

        return rows.ToLookup(r => r.Part, r => r.Reason);
    }
}
