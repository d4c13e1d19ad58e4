using Npgsql;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;

namespace Traceability.Persistence.Book;

/// <summary>
/// Keeps the tables that film lots are counted from in step with the facts, in the same transaction: every film in or once in a part whose
/// verdicts, contents or whereabouts changed is followed anew. One statement decides for a film, whether one part changed or everything is
/// rebuilt.
/// </summary>
public sealed class FilmFates
{
    /// <summary>
    /// $1 parts: the diaphragms with film among them, in what was ever fitted to them, and in what is or was inside these. What two films
    /// of one lot got into together counts for the first: no film comes into a diaphragm that is fitted in something, so whatever changes
    /// which is the first is a change of that part.
    /// </summary>
    private const string TouchedSql = """
        with touched as (
            select unnest($1) as part
            union
            select f.child_id from fittings f where f.part_id = any($1) and f.child_id is not null
        ), within as (
            select part from touched
            union
            select c.item_id from touched t join containments c on c.container_id = t.part and not c.item_is_lot
        )
        select distinct w.part from within w join containments c on c.container_id = w.part and c.item_is_lot and c.depth = 1
            join lots l on l.id = c.item_id and l.kind = 'film'
        """;

    /// <summary>
    /// $1 diaphragms. Two commands on two parts may hold the same film; the second waits here, and follows it when the facts of the first
    /// are there to be seen.
    /// </summary>
    private const string LockSql = "select from film_fates where diaphragm_id = any($1) order by diaphragm_id, lot_id for update";

    /// <summary>
    /// The statements are long and their look-ups few: planning one for its very diaphragms takes longer than running it, and for some
    /// hundred of them the plan reads whole tables. So the plan for any diaphragms is kept, which goes by the indexes.
    /// </summary>
    private const string KeepPlansSql = "set local plan_cache_mode = force_generic_plan";

    private const int FillAtOnce = 100;

    private readonly HashSet<Guid> touched = [];

    /// <summary>Notes what a command changes about a part; most facts change nothing about a film.</summary>
    public void Note(Guid partId, IEnumerable<Fact> facts)
    {
        if (
            facts.Any(f =>
                f
                    is AttemptEnding
                        or Correction
                        or Nonconformity
                        or Disposition
                        or DoubtDecision
                        or Fitting
                        or Removal
                        or Shipment
                        or UnitReturn
            )
        )
        {
            touched.Add(partId);
        }
    }

    public void Clear() => touched.Clear();

    /// <summary>Follows the films of all parts noted; to be called when their facts, standings and containments are written.</summary>
    public async Task WriteAsync(WorkshopContext db, CancellationToken cancellation)
    {
        if (
            touched.Count > 0
            && await AskAsync(db, [TouchedSql], touched.ToArray(), r => r.GetGuid(0), cancellation) is { Count: > 0 } diaphragms
        )
        {
            await KeepAsync(db, [.. diaphragms], cancellation);
        }
    }

    /// <summary>Brings the rows of these diaphragms into line with the facts.</summary>
    public static Task KeepAsync(WorkshopContext db, Guid[] diaphragms, CancellationToken cancellation) =>
        RunAsync(db, [LockSql, FilmFateSql.KeepFates], diaphragms, cancellation);

    /// <summary>The same where rows may be there that no fact supports.</summary>
    public static Task MendAsync(WorkshopContext db, Guid[] diaphragms, CancellationToken cancellation) =>
        RunAsync(db, [FilmFateSql.Clear, FilmFateSql.KeepFates], diaphragms, cancellation);

    /// <summary>Every diaphragm that holds film or is said to.</summary>
    public static Task<IReadOnlyList<Guid>> AllAsync(WorkshopContext db, CancellationToken cancellation) =>
        db.RowsAsync(
            """
            select c.container_id from containments c join lots l on l.id = c.item_id and l.kind = 'film' where c.item_is_lot
                and c.depth = 1
            union select diaphragm_id from film_fates order by 1
            """,
            [],
            r => r.GetGuid(0),
            cancellation
        );

    /// <summary>Follows all films of a store whose facts came by another way than the record book, as the benchmarks fill theirs.</summary>
    public static async Task FillAsync(WorkshopContext db, CancellationToken cancellation)
    {
        foreach (var diaphragms in (await AllAsync(db, cancellation)).Chunk(FillAtOnce))
        {
            // Nobody else writes meanwhile: nothing is locked. Looking for rows to lock in a table that was empty when it was planned reads
            // it whole, every time.
            await RunAsync(db, [FilmFateSql.KeepFates], diaphragms, cancellation);
        }
    }

    /// <summary>What the rows of these diaphragms say otherwise than the facts, in words.</summary>
    public static async Task<IReadOnlyList<string>> DifferencesAsync(WorkshopContext db, Guid[] diaphragms, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        return await AskAsync(
            db,
            [FilmFateSql.WrongFates],
            diaphragms,
            r => $"film lot {r.GetString(0)}: another fate of {r.GetString(1)} is kept than the facts say",
            cancellation
        );
    }

    /// <summary>Inside the transaction of a command, or in one of its own.</summary>
    private static async Task RunAsync(
        WorkshopContext db,
        IEnumerable<string> statements,
        Guid[] diaphragms,
        CancellationToken cancellation
    )
    {
        await using var own = db.Database.CurrentTransaction is null ? await db.Database.BeginTransactionAsync(cancellation) : null;
        await AskAsync(db, statements, diaphragms, _ => true, cancellation);
        if (own is not null)
        {
            await own.CommitAsync(cancellation);
        }
    }

    /// <summary>Runs statements about the same ids together; the rows of the first are the answer.</summary>
    private static Task<List<T>> AskAsync<T>(
        WorkshopContext db,
        IEnumerable<string> statements,
        Guid[] ids,
        Func<NpgsqlDataReader, T> row,
        CancellationToken cancellation
    ) =>
        OneRoundTrip.RunAsync(
            db,
            [
                new NpgsqlBatchCommand(KeepPlansSql),
                .. statements.Select(sql => new NpgsqlBatchCommand(sql) { Parameters = { new() { Value = ids } } }),
            ],
            async reader =>
            {
                var rows = new List<T>();
                while (await reader.ReadAsync(cancellation))
                {
                    rows.Add(row(reader));
                }

                while (await reader.NextResultAsync(cancellation))
                {
                    // Reading to the end raises what went wrong.
                }

                return rows;
            },
            cancellation
        );
}
