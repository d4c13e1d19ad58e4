using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>Loads a person as the gates see them, with roles and qualifications, in one statement.</summary>
public static class ActorQuery
{
    /// <summary>
    /// By the hash of a session's token, as every request asks; the benchmark runs the same statement beside the service.
    /// </summary>
    public const string BySession =
        $"{Columns} from sign_in_sessions s join people p on p.id = s.person_id where s.token_hash = $1 and s.expires_at > $2";

    private const string ById = $"{Columns} from people p where p.id = $1";

    private const string Columns = """
        select to_jsonb(p) || coalesce((select jsonb_build_object('name', c.name) from name_corrections c where c.subject_id = p.id
                order by c.recorded_at desc limit 1), '{}'),
            (select coalesce(jsonb_agg(to_jsonb(g) order by g.recorded_at), '[]') from role_grants g where g.person_id = p.id),
            (select coalesce(jsonb_agg(to_jsonb(g) order by g.recorded_at), '[]') from qualification_grants g where g.person_id = p.id)
        """;

    /// <summary>The person whose session has that token and has not ended, or null.</summary>
    public static Task<Actor?> OfSessionAsync(WorkshopContext db, string tokenHash, DateTimeOffset now, CancellationToken cancellation) =>
        RunAsync(
            db,
            new(BySession)
            {
                Parameters =
                {
                    new() { Value = tokenHash },
                    new() { Value = now },
                },
            },
            cancellation
        );

    /// <summary>The person with that id, or null.</summary>
    public static Task<Actor?> FindAsync(WorkshopContext db, Guid personId, CancellationToken cancellation) =>
        RunAsync(db, new(ById) { Parameters = { new() { Value = personId } } }, cancellation);

    /// <summary>
    /// The instrument whose token that is, as an actor in the role instrument; null when the token is unknown or revoked.
    /// </summary>
    public static async Task<Actor?> OfInstrumentTokenAsync(WorkshopContext db, string tokenHash, CancellationToken cancellation) =>
        await (
            from t in db.Set<InstrumentToken>()
            join i in db.Offered<Instrument>() on t.InstrumentId equals i.Id
            where t.Hash == tokenHash && !db.Set<InstrumentTokenRevocation>().Any(r => r.TokenId == t.Id)
            select i
        )
            .AsNoTracking()
            .FirstOrDefaultAsync(cancellation)
            is { } instrument
            ? new(instrument.Id, instrument.Code, instrument.Title, new HashSet<Role> { Role.Instrument }, [])
            : null;

    private static Task<Actor?> RunAsync(WorkshopContext db, NpgsqlBatchCommand statement, CancellationToken cancellation) =>
        OneRoundTrip.RunAsync(
            db,
            [statement],
            async reader =>
            {
                if (!await reader.ReadAsync(cancellation))
                {
                    return null;
                }

                var person = Read<Person>(reader, 0);
                var held = Read<List<RoleGrant>>(reader, 1).GroupBy(g => g.Role).Where(g => g.Last().Given).Select(g => g.Key).ToHashSet();
                return new Actor(person.Id, person.Badge, person.Name, held, Read<List<QualificationGrant>>(reader, 2));
            },
            cancellation
        );

    private static T Read<T>(NpgsqlDataReader reader, int column) => JsonSerializer.Deserialize<T>(reader.GetString(column), FactJson.Row)!;
}
