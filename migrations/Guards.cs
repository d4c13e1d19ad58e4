using Microsoft.EntityFrameworkCore.Migrations;

namespace Traceability.Migrations;

/// <summary>
/// What the database itself refuses: changing or deleting a fact, by anybody; and what each role may do at all. The lists are those of the
/// first migration and stay as they are: a later one calls <see cref="Protect"/> or <see cref="Derive"/> for the tables that it adds.
/// </summary>
internal static class Guards
{
    /// <summary>
    /// Tables whose rows may be inserted and read, never changed. Besides the facts these are the ledger and the kept files.
    /// </summary>
    private static readonly string[] InsertOnly =
    [
        "people",
        "role_grants",
        "qualification_grants",
        "pin_settings",
        "pin_codes",
        "stations",
        "carriers",
        "instruments",
        "calibrations",
        "instrument_checks",
        "route_revisions",
        "route_approvals",
        "lots",
        "lot_decisions",
        "parts",
        "carrier_placements",
        "carrier_releases",
        "loads",
        "attempts",
        "instrument_uses",
        "readings",
        "corrections",
        "evidence",
        "fittings",
        "removals",
        "attempt_endings",
        "nonconformities",
        "dispositions",
        "holds",
        "hold_releases",
        "certificates",
        "shipments",
        "unit_returns",
        "return_findings",
        "return_outcomes",
        "return_closings",
        "doubt_decisions",
        "instrument_tokens",
        "instrument_token_revocations",
        "concession_permits",
        "measurement_studies",
        "measurement_study_readings",
        "notice_acknowledgements",
        "ledger_entries",
        "stored_files",
        "idempotent_answers",
    ];

    /// <summary>Tables that can be computed again from the facts.</summary>
    private static readonly string[] Derived =
    [
        "part_standings",
        "containments",
        "ledger_heads",
        "stage_verdicts",
        "film_fates",
        "film_paths",
    ];

    /// <summary>Tables that only keep the service running; those who read for reports do not see them.</summary>
    private static readonly string[] Operating =
    [
        "sign_in_sessions",
        "pin_tries",
        "station_screens",
        "workshop_settings",
        "data_protection_keys",
    ];

    /// <summary>Makes the roles, the triggers and the grants. Roles belong to the server and may be there already.</summary>
    public static void Put(MigrationBuilder migration)
    {
        migration.Sql(
            """
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
                raise exception 'facts are never changed: % on % was refused', tg_op, tg_table_name using
                    errcode = 'insufficient_privilege', hint = 'record a further fact: a correction, a removal, a disposition';
            end $$;
            """
        );
        Protect(migration, InsertOnly);
        Derive(migration, Derived);
        foreach (var table in Operating)
        {
            migration.Sql($"grant select, insert, update, delete on {table} to traceability_app;");
        }

        migration.Sql(
            """
            revoke select on pin_settings, pin_codes, idempotent_answers from traceability_reader;
            grant select on "__EFMigrationsHistory" to traceability_app;
            grant usage on all sequences in schema public to traceability_app;
            """
        );
    }

    /// <summary>Makes tables insert-only.</summary>
    public static void Protect(MigrationBuilder migration, params IEnumerable<string> tables)
    {
        foreach (var table in tables)
        {
            migration.Sql(
                $"""
                create trigger never_changed before update or delete or truncate on {table}
                    for each statement execute function refuse_change();
                grant select, insert on {table} to traceability_app;
                grant select on {table} to traceability_reader;
                """
            );
        }
    }

    /// <summary>Lets the service change derived tables, and everybody with a right to read read them.</summary>
    public static void Derive(MigrationBuilder migration, params IEnumerable<string> tables)
    {
        foreach (var table in tables)
        {
            migration.Sql(
                $"""
                grant select, insert, update, delete on {table} to traceability_app;
                grant select on {table} to traceability_reader;
                """
            );
        }
    }
}
