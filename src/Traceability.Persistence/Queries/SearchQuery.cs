using Npgsql;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>A part by its serial or by the carrier that stands for it.</summary>
public sealed record PartHit(string Serial, string? Carrier, string Kind, string Model, string State);

/// <summary>A lot by its number or by its supplier's.</summary>
public sealed record LotHit(string Number, string Kind, string Supplier, string SupplierLot);

/// <summary>A unit by the reference under which it was shipped or came back.</summary>
public sealed record ReferenceHit(string Reference, string Serial, string Model, DateTimeOffset At, bool Shipped);

/// <summary>What a search found.</summary>
public sealed record SearchHits(IReadOnlyList<PartHit> Parts, IReadOnlyList<LotHit> Lots, IReadOnlyList<ReferenceHit> References);

/// <summary>
/// Looks a fragment up in one round trip. Fragments are found by indexes of their trigrams (see the migration SearchIndexes), which need three
/// characters: one or two are looked for at the beginning only. Of more hits than anybody reads the first that turn up are sorted and shown.
/// </summary>
public sealed class SearchQuery(WorkshopContext db)
{
    /// <summary>At most so many of each are shown.</summary>
    public const int Most = 100;

    private const int TrigramLength = 3;

    /// <summary>$1 what it may look like anywhere, $2 at the beginning; both in capitals, as serials and carriers are kept.</summary>
    private const string PartsSql = """
        with hits as (
            (select id, 0 as rank, null as carrier from parts where serial like $2 order by serial using ~<~ limit 100)
            union all
            (select id, 1, null from (select id, serial from parts where serial like $1 limit 1000) p where serial not like $2 order by serial using ~<~ limit 100)
            union all
            (select part_id, 2, carrier_code from part_standings where carrier_code like $1 limit 100)
        )
        select p.serial, h.carrier, p.kind, p.model, s.state
        from (select id, min(rank) as rank, case when min(rank) = 2 then min(carrier) end as carrier from hits group by id) h
        join parts p on p.id = h.id join part_standings s on s.part_id = h.id
        order by h.rank = 0 desc, p.serial using ~<~ limit 100
        """;

    private const string LotsSql = "select number, kind, supplier, supplier_lot from lots where number ilike $1 or supplier_lot ilike $1 order by number limit 100";

    private const string ReferencesSql = """
        select h.customer_reference, p.serial, p.model, h.occurred_at, h.shipped
        from (
            (select customer_reference, part_id, occurred_at, true as shipped from shipments where customer_reference ilike $1 limit 1000)
            union all
            (select customer_reference, part_id, occurred_at, false from unit_returns where customer_reference ilike $1 limit 1000)
        ) h join parts p on p.id = h.part_id
        order by 1, 4 limit 100
        """;

    /// <summary>Everything that looks like the text.</summary>
    public Task<SearchHits> RunAsync(string text, CancellationToken cancellation)
    {
        var beginning = $"{Escaped(text)}%";
        var anywhere = text.Length < TrigramLength ? beginning : $"%{beginning}";
        NpgsqlBatchCommand[] statements = [Of(PartsSql, anywhere.ToUpperInvariant(), beginning.ToUpperInvariant()), Of(LotsSql, anywhere), Of(ReferencesSql, anywhere)];
        return OneTrip.RunAsync(db, statements, async reader =>
        {
            var (parts, lots, references) = (new List<PartHit>(), new List<LotHit>(), new List<ReferenceHit>());
            while (await reader.ReadAsync(cancellation))
            {
                parts.Add(new(reader.GetString(0), reader.IsDBNull(1) ? null : reader.GetString(1), reader.GetString(2), reader.GetString(3), reader.GetString(4)));
            }

            await reader.NextResultAsync(cancellation);
            while (await reader.ReadAsync(cancellation))
            {
                lots.Add(new(reader.GetString(0), reader.GetString(1), reader.GetString(2), reader.GetString(3)));
            }

            await reader.NextResultAsync(cancellation);
            while (await reader.ReadAsync(cancellation))
            {
                references.Add(new(reader.GetString(0), reader.GetString(1), reader.GetString(2), reader.GetFieldValue<DateTimeOffset>(3), reader.GetBoolean(4)));
            }

            return new SearchHits(parts, lots, references);
        }, cancellation);
    }

    private static NpgsqlBatchCommand Of(string sql, params string[] values)
    {
        var command = new NpgsqlBatchCommand(sql);
        command.Parameters.AddRange(values.Select(v => new NpgsqlParameter { Value = v }).ToArray());
        return command;
    }

    /// <summary>The characters that mean something to LIKE, made to mean themselves.</summary>
    private static string Escaped(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("%", "\\%", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal);
}
