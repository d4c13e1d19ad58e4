using Microsoft.EntityFrameworkCore.Migrations;

namespace Traceability.Migrations;

/// <summary>What the database itself refuses: changing or deleting a fact, by anybody; and what each role may do at all.</summary>
internal static class Guards
{
    /// <summary>Tables whose rows may be inserted and read, never changed. Besides the facts these are the ledger and the kept files.</summary>
    private static readonly string[] InsertOnly =
    [
        "people", "role_grants", "qualification_grants", "pin_settings", "stations", "carriers", "instruments", "calibrations", "instrument_checks",
        "route_revisions", "lots", "lot_decisions", "parts", "carrier_placements", "carrier_releases", "loads", "attempts", "instrument_uses", "readings",
        "corrections", "evidence", "fittings", "removals", "attempt_endings", "nonconformities", "dispositions", "holds", "hold_releases", "certificates",
        "shipments", "unit_returns", "return_findings", "return_closings", "ledger_entries", "stored_files", "idempotent_answers",
    ];

    /// <summary>Tables derived from facts, or that only keep the service running.</summary>
    private static readonly string[] Changeable =
        ["part_standings", "containments", "ledger_heads", "sign_in_sessions", "sign_in_failures", "station_seats", "workshop_settings", "data_protection_keys"];

    /// <summary>Makes the roles, the triggers and the grants. Roles belong to the server and may be there already.</summary>
    public static void Put(MigrationBuilder migration)
    {
        migration.Sql("""
            do $$
            declare name text;
            begin
                foreach name in array array['traceability_app', 'traceability_reader'] loop
                    begin
                        execute format('create role %I nologin', name);
                    exception when duplicate_object or unique_violation then null;
                    end;
                end loop;
                execute format('grant traceability_app, traceability_reader to %I', current_user);
                execute format('revoke create on schema public from public');
                execute format('grant usage on schema public to traceability_app, traceability_reader');
            end $$;

            create function refuse_change() returns trigger language plpgsql as $$
            begin
                raise exception 'facts are never changed: % on % was refused', tg_op, tg_table_name using errcode = 'insufficient_privilege',
                    hint = 'record a further fact: a correction, a removal, a disposition';
            end $$;
            """);
        Protect(migration, InsertOnly);

        foreach (var table in Changeable)
        {
            migration.Sql($"grant select, insert, update, delete on {table} to traceability_app;");
        }

        migration.Sql("""
            grant select on part_standings, containments, ledger_heads to traceability_reader;
            revoke select on pin_settings, idempotent_answers from traceability_reader;
            grant select on "__EFMigrationsHistory" to traceability_app;
            grant usage on all sequences in schema public to traceability_app;
            """);
    }

    /// <summary>Makes tables insert-only; a later migration calls it for the fact tables that it adds.</summary>
    public static void Protect(MigrationBuilder migration, params IEnumerable<string> tables)
    {
        foreach (var table in tables)
        {
            migration.Sql($"""
                create trigger never_changed before update or delete or truncate on {table} for each statement execute function refuse_change();
                grant select, insert on {table} to traceability_app;
                grant select on {table} to traceability_reader;
                """);
        }
    }

    /// <summary>Lets the service change derived tables that a later migration adds, and everybody with a right to read read them.</summary>
    public static void Derive(MigrationBuilder migration, params IEnumerable<string> tables)
    {
        foreach (var table in tables)
        {
            migration.Sql($"""
                grant select, insert, update, delete on {table} to traceability_app;
                grant select on {table} to traceability_reader;
                """);
        }
    }

    /// <summary>Takes the triggers' function away; the tables go by themselves.</summary>
    public static void Take(MigrationBuilder migration) => migration.Sql("drop function if exists refuse_change() cascade;");
}
