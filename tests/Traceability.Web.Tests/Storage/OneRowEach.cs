using Npgsql;

namespace Traceability.Web.Tests.Storage;

/// <summary>
/// One row in every table that a database has, whatever tables those are: the classes know the tables of today only. Every id is the same,
/// so that whatever refers to something finds it.
/// </summary>
internal static class OneRowEach
{
    /// <summary>References are not checked meanwhile, because tables are filled in the order of their names.</summary>
    private const string PutSql = """
        do $$
        declare one record;
        begin
            set local session_replication_role = replica;
            for one in
                select c.table_name, string_agg(quote_ident(c.column_name), ', ') as names, string_agg(
                    case c.udt_name
                        when 'uuid' then quote_literal('00000000-0000-0000-0000-000000000001')
                        when 'text' then quote_literal('x')
                        when 'bool' then 'true'
                        when 'int4' then '1'
                        when 'int8' then '1'
                        when 'numeric' then '1.50'
                        when 'date' then 'current_date'
                        when 'timestamptz' then 'now()'
                        when 'jsonb' then quote_literal('{}')
                        when 'bytea' then quote_literal('x')
                        else case c.data_type when 'ARRAY' then quote_literal('{}') else 'no_value_is_known_for_' || c.udt_name end
                    end, ', ') as row
                from information_schema.columns c join information_schema.tables t using (table_schema, table_name)
                where table_schema = 'public' and table_type = 'BASE TABLE' and table_name <> '__EFMigrationsHistory' and is_identity = 'NO'
                group by c.table_name
            loop
                execute format('insert into %I (%s) values (%s)', one.table_name, one.names, one.row);
            end loop;
        end $$
        """;

    private const string InsertOnlySql = "select tgrelid::regclass::text from pg_trigger where tgname = 'never_changed'";

    public static async Task PutAsync(string connectionString)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var put = source.CreateCommand(PutSql);
        await put.ExecuteNonQueryAsync();
    }

    /// <summary>How many rows all insert-only tables have together.</summary>
    public static async Task<long> FactsAsync(string connectionString)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        var tables = new List<string>();
        await using (var list = source.CreateCommand(InsertOnlySql))
        await using (var reader = await list.ExecuteReaderAsync())
        {
            while (await reader.ReadAsync())
            {
                tables.Add(reader.GetString(0));
            }
        }

        var rows = 0L;
        foreach (var table in tables)
        {
            await using var count = source.CreateCommand($"select count(*) from {table}");
            rows += (long)(await count.ExecuteScalarAsync())!;
        }

        return rows;
    }
}
