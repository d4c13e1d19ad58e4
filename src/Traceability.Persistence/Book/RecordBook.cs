using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>
/// The one write door. A command runs inside one transaction: its subjects are locked, the decision is taken, and facts, ledger entry,
/// closure rows, derived state, verdicts, fates of film and idempotency key are written together or not at all.
/// </summary>
public sealed class RecordBook(WorkshopContext db, DossierReader dossiers, TimeProvider clock)
{
    /// <summary>Locks subjects in the order of their ids; the benchmark runs the same statements beside the service.</summary>
    public const string LockSql = "select to_jsonb(h) from ledger_heads h where subject_id = any($1) order by subject_id for update";

    /// <summary>Where the parts stand.</summary>
    public const string StandingsSql = "select to_jsonb(s) from part_standings s where part_id = any($1)";

    private readonly Closure closure = new();

    private readonly FilmFates films = new();

    private readonly KeptAnswers answers = new(db, clock);

    /// <summary>
    /// When the newest entry of the ledger was recorded, once it was asked in this run; and the earliest moment that this run records at.
    /// </summary>
    private (DateTimeOffset? RecordedAt, bool Asked) newest;

    private DateTimeOffset? recordsAt;

    /// <summary>
    /// Runs a command once per idempotency key. The delegate may be run again from the start when another transaction won a race,
    /// so it must not keep anything from an earlier run.
    /// </summary>
    public async Task<WrittenAnswer> WriteAsync<TAnswer>(
        WriteRequest request,
        JsonSerializerOptions json,
        Func<CancellationToken, Task<TAnswer>> decide,
        CancellationToken cancellation
    )
        where TAnswer : Answer
    {
        for (var run = 1; ; run++)
        {
            try
            {
                return await RunOnceAsync(request, json, decide, cancellation);
            }
            catch (Exception lost) when (run < 5 && LostRaces.Is(lost))
            {
                await Task.Delay(TimeSpan.FromMilliseconds(5 * run), cancellation);
            }
            finally
            {
                Forget();
            }
        }
    }

    /// <summary>Runs a command and takes all of it back, to say what it would come to.</summary>
    public async Task<T> TryAsync<T>(Func<CancellationToken, Task<T>> decide, CancellationToken cancellation)
    {
        try
        {
            await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
            return await decide(cancellation);
        }
        finally
        {
            Forget();
        }
    }

    /// <summary>
    /// Sends what was appended so far to the database, so that the next line of a table finds it there. It is recorded when the whole
    /// command is, or not at all.
    /// </summary>
    public async Task SaveSoFarAsync(CancellationToken cancellation)
    {
        await db.SaveChangesAsync(cancellation);
        db.ChangeTracker.Clear();
    }

    /// <summary>
    /// Locks these parts (in the order of their ids, so that two commands never wait for each other) and loads their dossiers.
    /// </summary>
    public async Task<IReadOnlyDictionary<Guid, OpenPart>> OpenAsync(IEnumerable<Guid> partIds, CancellationToken cancellation)
    {
        var ids = partIds.Distinct().Order().ToArray();
        return await OneRoundTrip.RunAsync(
            db,
            [Of(LockSql, ids), new(NewestEntry.Sql), Of(StandingsSql, ids), .. DossierReader.Statements(ids)],
            async reader =>
            {
                var heads = await TrackedAsync<LedgerHead>(reader, h => h.SubjectId, cancellation);
                await reader.NextResultAsync(cancellation);
                newest = (await NewestEntry.ReadAsync(reader, cancellation), true);
                await reader.NextResultAsync(cancellation);
                var standings = await TrackedAsync<PartStanding>(reader, s => s.PartId, cancellation);
                await reader.NextResultAsync(cancellation);
                return (await dossiers.ReadAsync(reader, cancellation)).ToDictionary(
                    d => d.Key,
                    d => new OpenPart(d.Value, heads[d.Key], standings[d.Key])
                );
            },
            cancellation
        );
    }

    /// <summary>Locks one part and loads its dossier; null when it does not exist.</summary>
    public async Task<OpenPart?> OpenAsync(Guid partId, CancellationToken cancellation) =>
        (await OpenAsync([partId], cancellation)).GetValueOrDefault(partId);

    /// <summary>Starts the file of a part that is being registered in this transaction.</summary>
    public OpenPart Start(Dossier dossier)
    {
        var head = StartLedger(dossier.Part.Id);
        var standing = new PartStanding
        {
            PartId = dossier.Part.Id,
            RouteId = dossier.Part.RouteId,
            State = "",
        };
        db.Add(standing);
        return new(dossier, head, standing);
    }

    /// <summary>
    /// Appends facts to a part: tables, ledger, closure and derived state. A reading is a row, a ledger entry and the part's standing: what
    /// is inside what, the fate of film and verdicts stay as they are.
    /// </summary>
    public void Append(OpenPart part, string command, params IReadOnlyList<Fact> facts)
    {
        Write(part.Head, command, facts);
        part.Dossier = part.Dossier.With(facts, PlacementsOf.After(part.Dossier.Around, facts));
        closure.Note(facts);
        films.Note(part.Dossier.Part.Id, facts);
        KeepVerdicts(facts, part.Dossier);
        StandingOf.Update(part.Standing, part.Dossier, facts[^1].OccurredAt);
    }

    /// <summary>
    /// Notes on a part that it was fitted in, or taken out of, another: a change of its standing, told by the other part's facts.
    /// </summary>
    public static void SetFittedIn(OpenPart part, Part? fittedIn, DateTimeOffset at)
    {
        part.Dossier = part.Dossier.With([], part.Dossier.Around with { FittedInSerial = fittedIn?.Serial, Outermost = null });
        part.Standing.FittedInId = fittedIn?.Id;
        StandingOf.Update(part.Standing, part.Dossier, at);
    }

    /// <summary>Appends facts to a subject that is not a part: a lot, an instrument, a person, a route.</summary>
    public async Task AppendAsync(Guid subjectId, string command, IReadOnlyList<Fact> facts, CancellationToken cancellation) =>
        Write((await LockHeadsAsync([subjectId], cancellation)).GetValueOrDefault(subjectId) ?? StartLedger(subjectId), command, facts);

    /// <summary>Appends a fact each to several such subjects, which are locked together.</summary>
    public async Task AppendAsync(string command, IReadOnlyCollection<(Guid SubjectId, Fact Fact)> facts, CancellationToken cancellation)
    {
        var heads = await LockHeadsAsync([.. facts.Select(f => f.SubjectId).Distinct().Order()], cancellation);
        foreach (var (subjectId, fact) in facts)
        {
            if (!heads.TryGetValue(subjectId, out var head))
            {
                heads[subjectId] = head = StartLedger(subjectId);
            }

            Write(head, command, [fact]);
        }
    }

    /// <summary>Locks a subject that is only read, so that what is counted about it holds until the end of the command.</summary>
    public Task LockAsync(Guid subjectId, CancellationToken cancellation) => LockHeadsAsync([subjectId], cancellation);

    /// <summary>Locks several such subjects, in the order of their ids.</summary>
    public Task LockAsync(IEnumerable<Guid> subjectIds, CancellationToken cancellation) =>
        LockHeadsAsync([.. subjectIds.Distinct().Order()], cancellation);

    /// <summary>Keeps the bytes of a file under their SHA-256; the same content is kept once.</summary>
    public async Task KeepFileAsync(string sha256, byte[] bytes, CancellationToken cancellation) =>
        await db.Database.ExecuteSqlAsync(
            $"insert into stored_files (sha256, bytes) values ({sha256}, {bytes}) on conflict do nothing",
            cancellation
        );

    private async Task<WrittenAnswer> RunOnceAsync<TAnswer>(
        WriteRequest request,
        JsonSerializerOptions json,
        Func<CancellationToken, Task<TAnswer>> decide,
        CancellationToken cancellation
    )
        where TAnswer : Answer
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await answers.EarlierAsync(request, cancellation) is { } earlier)
        {
            return earlier;
        }

        var answer = await decide(cancellation);
        if (answer.Refusal is { } refusal)
        {
            // The same command may have come twice at once: what refuses this one is then what the other has just written.
            return await answers.EarlierAsync(request, cancellation) ?? new(0, "", refusal, false);
        }

        if (await ClockRefusalAsync(cancellation) is { } behind)
        {
            return new(0, "", behind, false);
        }

        var body = JsonSerializer.Serialize(answer.Body, json);
        answers.Keep(request, answer, body);
        await db.SaveChangesAsync(cancellation);
        await closure.WriteAsync(db, cancellation);
        await films.WriteAsync(db, cancellation);
        await transaction.CommitAsync(cancellation);
        return new(answer.Status, body, null, false);
    }

    private void Forget()
    {
        db.ChangeTracker.Clear();
        closure.Clear();
        films.Clear();
        (newest, recordsAt) = (default, null);
    }

    private async Task<Refusal?> ClockRefusalAsync(CancellationToken cancellation) =>
        recordsAt is { } at
            ? ServerClock.Behind(at, newest.Asked ? newest.RecordedAt : await NewestEntry.RecordedAtAsync(db, cancellation))
            : null;

    private Task<Dictionary<Guid, LedgerHead>> LockHeadsAsync(Guid[] subjectIds, CancellationToken cancellation) =>
        OneRoundTrip.RunAsync(
            db,
            [Of(LockSql, subjectIds)],
            reader => TrackedAsync<LedgerHead>(reader, h => h.SubjectId, cancellation),
            cancellation
        );

    private static NpgsqlBatchCommand Of(string sql, Guid[] ids) => new(sql) { Parameters = { new() { Value = ids } } };

    /// <summary>
    /// Takes rows into the context, which writes what changes on them; one that it has taken already stays as it was changed.
    /// </summary>
    private async Task<Dictionary<Guid, T>> TrackedAsync<T>(NpgsqlDataReader reader, Func<T, Guid> key, CancellationToken cancellation)
        where T : class
    {
        var rows = new Dictionary<Guid, T>();
        while (await reader.ReadAsync(cancellation))
        {
            var row = JsonSerializer.Deserialize<T>(reader.GetString(0), FactJson.Row)!;
            rows[key(row)] = db.Set<T>().Local.FindEntry(key(row))?.Entity ?? db.Attach(row).Entity;
        }

        return rows;
    }

    private LedgerHead StartLedger(Guid subjectId)
    {
        var head = new LedgerHead { SubjectId = subjectId, Hash = LedgerChain.BeforeFirst };
        db.Add(head);
        return head;
    }

    private void Write(LedgerHead head, string command, IReadOnlyList<Fact> facts)
    {
        recordsAt = recordsAt < facts[^1].RecordedAt ? recordsAt : facts[^1].RecordedAt;
        db.AddRange(facts);
        db.Add(LedgerChain.Next(head, command, facts));
    }

    /// <summary>An attempt whose reading is corrected was ended by an earlier command, or earlier in this one.</summary>
    private void KeepVerdicts(IReadOnlyList<Fact> facts, Dossier dossier)
    {
        var (made, changed) = VerdictsOf.By(facts, dossier);
        db.AddRange(made);
        foreach (var verdict in changed)
        {
            if (db.Set<StageVerdict>().Local.FindEntry(verdict.AttemptId) is { } tracked)
            {
                tracked.CurrentValues.SetValues(verdict);
            }
            else
            {
                db.Update(verdict);
            }
        }
    }
}
