using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Book;

/// <summary>Keeps the containment rows in step with fittings and removals, in the same transaction.</summary>
internal sealed class Closure
{
    // $1 parent, $2 fitting, $3 item, $4 item is a lot, $5 from when
    public const string Fit = """
        insert into containments (container_id, fitting_id, item_id, item_is_lot, depth, present_from)
        select a.container_id, x.fitting_id, x.item_id, x.item_is_lot, a.depth + x.depth, greatest(x.present_from, $5)
        from (
            select $1::uuid as container_id, 0 as depth
            union all
            select container_id, depth from containments where item_id = $1 and not item_is_lot and present_until is null
        ) a
        cross join (
            select $2::uuid as fitting_id, $3::uuid as item_id, $4::boolean as item_is_lot, 1 as depth, $5::timestamptz as present_from
            union all
            select fitting_id, item_id, item_is_lot, depth + 1, present_from from containments where container_id = $3 and not $4
                and present_until is null
        ) x
        """;

    // $1 fitting, $2 until when; every present row that reaches its item through the fitting
    private const string Through = """
        fittings f
        where f.id = $1 and c.present_until is null
          and (c.container_id = f.part_id or c.container_id in (select container_id from containments where item_id = f.part_id
              and not item_is_lot and present_until is null))
          and (c.fitting_id = f.id or c.fitting_id in (select fitting_id from containments where container_id = f.child_id
              and present_until is null))
        """;

    private const string Remove = $"update containments c set present_until = $2 from {Through}";

    /// <summary>
    /// Whoever enters older records by the minute may take out what was fitted in that minute: it was in nothing above its parent.
    /// </summary>
    private const string RemoveTimeless = $"delete from containments c using {Through} and c.depth > 1 and c.present_from >= $2";

    private readonly List<Fact> noted = [];

    public void Note(IEnumerable<Fact> facts) => noted.AddRange(facts.Where(f => f is Fitting or Removal));

    public void Clear() => noted.Clear();

    public async Task WriteAsync(WorkshopContext db, CancellationToken cancellation)
    {
        if (noted.Count == 0)
        {
            return;
        }

        await using var batch = new NpgsqlBatch(
            (NpgsqlConnection)db.Database.GetDbConnection(),
            (NpgsqlTransaction)db.Database.CurrentTransaction!.GetDbTransaction()
        );
        foreach (var fact in noted)
        {
            switch (fact)
            {
                case Fitting f:
                    batch.BatchCommands.Add(Command(Fit, f.PartId, f.Id, f.ItemId, f.LotId is not null, f.OccurredAt));
                    break;
                case Removal r:
                    batch.BatchCommands.Add(Command(RemoveTimeless, r.FittingId, r.OccurredAt));
                    batch.BatchCommands.Add(Command(Remove, r.FittingId, r.OccurredAt));
                    break;
            }
        }

        await batch.ExecuteNonQueryAsync(cancellation);
    }

    private static NpgsqlBatchCommand Command(string sql, params object[] values)
    {
        var command = new NpgsqlBatchCommand(sql);
        foreach (var value in values)
        {
            command.Parameters.Add(new() { Value = value });
        }

        return command;
    }
}
