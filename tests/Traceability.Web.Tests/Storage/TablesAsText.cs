using Npgsql;

namespace Traceability.Web.Tests.Storage;

/// <summary>
/// Everything that migrations make, as PostgreSQL's own catalogue tells it, one line each: columns in their order, constraints, indexes,
/// triggers, functions, extensions, rights, and the migrations that were applied.
/// </summary>
internal static class TablesAsText
{
    private const string Sql = """
        select string_agg(line, chr(10) order by line) from (
            select concat_ws(' ', 'column', table_name, ordinal_position, column_name, udt_name, is_nullable, column_default, is_identity)
                as line from information_schema.columns where table_schema = 'public'
            union all select concat_ws(' ', 'constraint', conrelid::regclass, conname, pg_get_constraintdef(oid)) from pg_constraint
                where connamespace = 'public'::regnamespace
            union all select 'index ' || indexdef from pg_indexes where schemaname = 'public'
            union all select concat_ws(' ', 'trigger', tgenabled, pg_get_triggerdef(oid)) from pg_trigger where not tgisinternal
            union all select concat_ws(' ', 'function', proname, proacl, prosrc) from pg_proc p
                where pronamespace = 'public'::regnamespace
                and not exists (select from pg_depend d where d.objid = p.oid and d.deptype = 'e')
            union all select concat_ws(' ', 'extension', extname) from pg_extension
            union all select concat_ws(' ', 'rights', relkind, relname, relacl) from pg_class where relnamespace = 'public'::regnamespace
                and relkind in ('r', 'S', 'v')
            union all select concat_ws(' ', 'schema', nspname, nspacl) from pg_namespace where nspname = 'public'
            union all select concat_ws(' ', 'migration', migration_id) from "__EFMigrationsHistory") all_lines
        """;

    public static async Task<string> OfAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var ask = new NpgsqlCommand(Sql, connection);
        return (string)(await ask.ExecuteScalarAsync())!;
    }
}
