using System.Security.Cryptography;
using Npgsql;
using Traceability.Migrations;

namespace Traceability.Web.Hosting;

/// <summary>
/// Logins of their own for the service and for those who only read. A login that owns the tables could put every guard to sleep, even if it
/// works under the application's role: <c>reset role</c> gives it all its rights back. Where the owner may make logins, it makes them once;
/// their passwords are made up by the service and lie in a table that the owner alone reads, so that all instances on one server use the
/// same.
/// </summary>
public sealed class DatabaseLogins(ILogger log)
{
    private const string Secrets = """
        create table if not exists service_logins (login text primary key, password text not null);
        revoke all on service_logins from public;
        """;

    /// <summary>The connection string under which the service works, as an own login where that is possible.</summary>
    public async Task<string> ForServiceAsync(string owner, string? given, CancellationToken cancellation)
    {
        if (given is not null)
        {
            await TryAsync(
                () => GrantAsync(owner, given, WorkshopOptions.AppRole, cancellation),
                "give rights to the login of ConnectionStrings__Traceability"
            );
            await WarnOfPowerAsync(given, cancellation);
            return given;
        }

        var made = await TryAsync(
            async () =>
            {
                var own = await MakeAsync(owner, "service", WorkshopOptions.AppRole, cancellation);
                await using var connection = new NpgsqlConnection(own);
                await connection.OpenAsync(cancellation);
                return own;
            },
            "make or use a login of its own for the service, and works under the given one: whoever holds it can put the guards of the"
                + " facts to sleep. Give the owner's login as ConnectionStrings__TraceabilityMigrations and another as"
                + " ConnectionStrings__Traceability"
        );
        return made ?? WorkshopOptions.AsApp(owner);
    }

    /// <summary>
    /// Sees to it that those who only read can: under the login that is named, or under one of their own, made without a password to begin
    /// with.
    /// </summary>
    public Task ForReadersAsync(string owner, string? given, CancellationToken cancellation) =>
        TryAsync(
            () =>
                given is not null
                    ? GrantAsync(owner, given, WorkshopOptions.ReaderRole, cancellation)
                    : MakeAsync(owner, "reports", WorkshopOptions.ReaderRole, cancellation),
            "make a login for those who only read"
        );

    private async Task<string?> TryAsync(Func<Task<string>> make, string what)
    {
        try
        {
            return await make();
        }
        catch (NpgsqlException e)
        {
            log.LogWarning("The service could not {What} ({Reason}).", what, e.Message);
            return null;
        }
    }

    private static async Task<string> GrantAsync(string owner, string given, string role, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(owner);
        await connection.OpenAsync(cancellation);
        var login =
            new NpgsqlConnectionStringBuilder(given).Username ?? throw new NpgsqlException("its connection string names no Username");
        if (await AskAsync<bool>(connection, $"select pg_has_role({Literal(login)}, {Literal(role)}, 'usage')", cancellation) is not true)
        {
            await RunAsync(connection, $"grant {role} to {Name(login)}", cancellation);
        }

        return given;
    }

    /// <summary>
    /// Makes the login when it is missing. Two instances may do so at once: the lock that keeps migrations apart is held around this.
    /// </summary>
    private static async Task<string> MakeAsync(string owner, string purpose, string role, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(owner);
        await connection.OpenAsync(cancellation);
        // Logins belong to the server, and several workshops may share one.
        var login = $"{connection.Database}_{purpose}";
        var known = await AskAsync<bool>(connection, "select to_regclass('service_logins') is not null", cancellation) is true
            ? await AskAsync<string>(
                connection,
                $"select password from service_logins s where login = {Literal(login)} and exists (select from pg_roles r where"
                    + " r.rolname = s.login)",
                cancellation
            )
            : null;
        if (known is null)
        {
            known = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(24));
            var exists =
                await AskAsync<bool>(connection, $"select exists (select from pg_roles where rolname = {Literal(login)})", cancellation)
                is true;
            await RunAsync(
                connection,
                $"""
                {Secrets}
                {(exists ? "alter" : "create")} role {Name(login)} login password {Literal(known)};
                grant {role} to {Name(login)};
                insert into service_logins values ({Literal(login)}, {Literal(
                    known
                )}) on conflict (login) do update set password = excluded.password;
                """,
                cancellation
            );
        }

        return new NpgsqlConnectionStringBuilder(owner) { Username = login, Password = known }.ConnectionString;
    }

    private async Task WarnOfPowerAsync(string given, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(given);
        await connection.OpenAsync(cancellation);
        if (
            await AskAsync<bool>(
                connection,
                "select rolsuper or pg_has_role(current_user, (select tableowner from pg_tables where tablename = 'readings'),"
                    + " 'member') from pg_roles where rolname = current_user",
                cancellation
            )
            is true
        )
        {
            log.LogWarning(
                "The login of ConnectionStrings__Traceability owns the tables or is a superuser: whoever holds it can put the guards of"
                    + " the facts to sleep. Give the service a login without such rights."
            );
        }
    }

    private static async Task<T?> AskAsync<T>(NpgsqlConnection connection, string sql, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        return await command.ExecuteScalarAsync(cancellation) is T value ? value : default;
    }

    private static async Task RunAsync(NpgsqlConnection connection, string sql, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(cancellation);
    }

    // Neither a role's name nor its password can be a parameter.
    private static string Literal(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";

    private static string Name(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
