using Npgsql;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>A part by its serial or by the carrier that stands for it.</summary>
public sealed record PartHit(Guid Id, string Serial, string? Carrier, string Kind, string Model, string State);

/// <summary>A lot by its number or by its supplier's.</summary>
public sealed record LotHit(string Number, string Kind, string Supplier, string SupplierLot);

/// <summary>A unit by the reference under which it was shipped or came back.</summary>
public sealed record ReferenceHit(string Reference, string Serial, string Model, DateTimeOffset At, bool Shipped);

/// <summary>A certificate by its number or by the address in its code.</summary>
public sealed record CertificateHit(string PublicId, int Revision, DateTimeOffset At, string Serial, string Model);

/// <summary>What a search found. <c>Mistaken</c>: nothing is called so, and these are one character away from it.</summary>
public sealed record SearchHits(
    IReadOnlyList<PartHit> Parts,
    IReadOnlyList<CertificateHit> Certificates,
    IReadOnlyList<LotHit> Lots,
    IReadOnlyList<ReferenceHit> References,
    bool Mistaken = false
)
{
    internal bool IsEmpty => Parts.Count + Certificates.Count + Lots.Count + References.Count == 0;
}

/// <summary>
/// Looks a text up in one round trip: what is called so however it is written (<see cref="CodeLikeness"/>), then what only holds it.
/// Fragments are found by indexes of their trigrams (see the migration SearchIndexes), which need three characters: one or two are looked
/// for at the beginning only; codes by the index of their keys (the migration CodeKeys). When there is nothing, a second trip looks for
/// codes with one mistake. Of more hits than anybody reads the first that turn up are sorted and shown, units before everything else.
/// </summary>
public sealed class SearchQuery(WorkshopContext db)
{
    /// <summary>At most so many of each are shown.</summary>
    public const int Most = 100;

    private const int TrigramLength = 3,
        ShortestKey = 2;

    /// <summary>$1 what it may look like anywhere, $2 at the beginning; both in capitals, as serials and carriers are kept.</summary>
    private const string PartsSql = """
        with hits as (
            (select id, 0 as rank, null as carrier from parts where serial like $2 order by serial using ~<~ limit 100)
            union all
            (select id, 0, null from parts where kind = 'unit' and serial like $2 order by serial using ~<~ limit 100)
            union all
            (select id, 1, null from (select id, serial from parts where serial like $1 limit 1000) p where serial not like $2
                order by serial using ~<~ limit 100)
            union all
            (select id, 1, null from parts where kind = 'unit' and serial like $1 and serial not like $2 limit 100)
            union all
            (select part_id, 2, carrier_code from part_standings where carrier_code like $1 limit 100)
        )
        select p.serial, h.carrier, p.kind, p.model, s.state, p.id
        from (select id, min(rank) as rank, case when min(rank) = 2 then min(carrier) end as carrier from hits group by id) h
        join parts p on p.id = h.id join part_standings s on s.part_id = h.id
        order by p.kind = 'unit' desc, h.rank = 0 desc, p.serial using ~<~ limit 100
        """;

    /// <summary>$1 keys.</summary>
    private static readonly string AlikeSql = $"""
        (select p.serial, null, p.kind, p.model, s.state, p.id from parts p join part_standings s on s.part_id = p.id
            where {CodeLikeness.KeySql(
            "p.serial"
        )} = any($1) limit 1000)
        union all
        (select p.serial, s.carrier_code, p.kind, p.model, s.state, p.id from part_standings s join parts p on p.id = s.part_id
        where s.carrier_code is not null and {CodeLikeness.KeySql("s.carrier_code")} = any($1) limit 100)
        """;

    /// <summary>$1 what it may look like anywhere, $2 keys.</summary>
    private static readonly string LotsSql = $"""
        select number, kind, supplier, supplier_lot from (
            (select id, number, kind, supplier, supplier_lot from lots where number ilike $1 or supplier_lot ilike $1
                order by number limit 100)
            union
            (select id, number, kind, supplier, supplier_lot from lots where {CodeLikeness.KeySql("number")} = any($2) limit 100)
        ) found where (select d.state from setup_decisions d where d.subject_id = found.id order by d.recorded_at desc limit 1)
            is distinct from 'Mistake'
        order by number
        """;

    private const string ReferencesSql = """
        select h.customer_reference, p.serial, p.model, h.occurred_at, h.shipped
        from (
            (select customer_reference, part_id, occurred_at, true as shipped from shipments where customer_reference ilike $1 limit 1000)
            union all
            (select customer_reference, part_id, occurred_at, false from unit_returns where customer_reference ilike $1 limit 1000)
        ) h join parts p on p.id = h.part_id
        order by 1, 4 limit 100
        """;

    /// <summary>$1 numbers.</summary>
    private const string CertificatesSql =
        "select c.public_id, c.revision, c.occurred_at, p.serial, p.model from certificates c join parts p on p.id = c.part_id where"
        + " c.public_id = any($1) order by c.public_id limit 100";

    /// <summary>Everything that looks like the text.</summary>
    public async Task<SearchHits> RunAsync(string text, CancellationToken cancellation)
    {
        var beginning = $"{Escaped(text)}%";
        var anywhere = text.Length < TrigramLength ? beginning : $"%{beginning}";
        var key = CodeLikeness.Key(text);
        var number = CertificateNumber.In(text);
        string[] keys = key.Length < ShortestKey ? [] : [key],
            numbers = number is null ? [] : [number];
        var (alike, certificates, lots, parts, references) = await OneRoundTrip.RunAsync(
            db,
            [
                Of(AlikeSql, [keys]),
                Of(CertificatesSql, [numbers]),
                Of(LotsSql, anywhere, keys),
                Of(PartsSql, anywhere.ToUpperInvariant(), beginning.ToUpperInvariant()),
                Of(ReferencesSql, anywhere),
            ],
            async r =>
                (
                    await NextAsync(r, Part),
                    await NextAsync(r, Certificate),
                    await NextAsync(r, Lot),
                    await NextAsync(r, Part),
                    await NextAsync(r, Reference)
                ),
            cancellation
        );
        var same = alike.Where(p => CodeLikeness.Apart(text, p.Carrier ?? p.Serial) == 0);
        var hits = new SearchHits(
            Ordered(same, parts),
            certificates,
            [.. lots.Where(l => Holds(l.Number) || Holds(l.SupplierLot) || CodeLikeness.Apart(text, l.Number) == 0)],
            references
        );
        return hits.IsEmpty ? await MistakenAsync(text, number, cancellation) : hits;

        bool Holds(string code) => code.Contains(text, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Codes with one character wrong, missing or too many, or two neighbours swapped.</summary>
    private async Task<SearchHits> MistakenAsync(string text, string? number, CancellationToken cancellation)
    {
        string[] keys =
            text.Count(char.IsAsciiLetterOrDigit) < CodeLikeness.ShortestWithMistake || text.Length > CodeText.MaxLength
                ? []
                : [.. CodeLikeness.KeysOneMistakeAway(text)];
        string[] numbers = number is null ? [] : [.. CodeLikeness.Mistaken(number, CertificateNumber.Characters)];
        var (parts, certificates, lots) = await OneRoundTrip.RunAsync(
            db,
            [Of(AlikeSql, [keys]), Of(CertificatesSql, [numbers]), Of(LotsSql, "", keys)],
            async r => (await NextAsync(r, Part), await NextAsync(r, Certificate), await NextAsync(r, Lot)),
            cancellation
        );
        return new(
            Ordered([], parts.Where(p => CodeLikeness.Apart(text, p.Carrier ?? p.Serial) <= 1)),
            certificates,
            [.. lots.Where(l => CodeLikeness.Apart(text, l.Number) <= 1)],
            [],
            true
        );
    }

    /// <summary>Units before everything else, and what is called so before what only holds it.</summary>
    private static IReadOnlyList<PartHit> Ordered(IEnumerable<PartHit> same, IEnumerable<PartHit> others) =>
        [
            .. same.OrderBy(IsNoUnit)
                .ThenBy(p => p.Serial, StringComparer.Ordinal)
                .Concat(others.OrderBy(IsNoUnit))
                .DistinctBy(p => p.Id)
                .Take(Most),
        ];

    private static bool IsNoUnit(PartHit hit) => hit.Kind != PartKinds.Unit;

    private static async Task<IReadOnlyList<T>> NextAsync<T>(NpgsqlDataReader reader, Func<NpgsqlDataReader, T> row)
    {
        var rows = new List<T>();
        while (await reader.ReadAsync())
        {
            rows.Add(row(reader));
        }

        await reader.NextResultAsync();
        return rows;
    }

    private static PartHit Part(NpgsqlDataReader r) =>
        new(r.GetGuid(5), r.GetString(0), r.IsDBNull(1) ? null : r.GetString(1), r.GetString(2), r.GetString(3), r.GetString(4));

    private static LotHit Lot(NpgsqlDataReader r) => new(r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3));

    private static ReferenceHit Reference(NpgsqlDataReader r) =>
        new(r.GetString(0), r.GetString(1), r.GetString(2), r.GetFieldValue<DateTimeOffset>(3), r.GetBoolean(4));

    private static CertificateHit Certificate(NpgsqlDataReader r) =>
        new(r.GetString(0), r.GetInt32(1), r.GetFieldValue<DateTimeOffset>(2), r.GetString(3), r.GetString(4));

    private static NpgsqlBatchCommand Of(string sql, params object[] values)
    {
        var command = new NpgsqlBatchCommand(sql);
        command.Parameters.AddRange(values.Select(v => new NpgsqlParameter { Value = v }).ToArray());
        return command;
    }

    /// <summary>The characters that mean something to LIKE, made to mean themselves.</summary>
    private static string Escaped(string text) =>
        text.Replace("\\", "\\\\", StringComparison.Ordinal)
            .Replace("%", "\\%", StringComparison.Ordinal)
            .Replace("_", "\\_", StringComparison.Ordinal);
}
