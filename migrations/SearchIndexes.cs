using Microsoft.EntityFrameworkCore.Migrations;

namespace Traceability.Migrations;

/// <summary>
/// Indexes that the model cannot state: serials by how they begin, serials and lot numbers by their key (so that one that is written
/// otherwise, or with one mistake, is found among millions), and everything that is searched by fragment by its trigrams. A server without
/// the extension pg_trgm (a package of its own on some systems) finds the same, only slower.
/// </summary>
internal static class SearchIndexes
{
    public static void Put(MigrationBuilder migration) =>
        migration.Sql(
            """
            create index ix_parts_serial_beginning on parts (serial text_pattern_ops);
            create index ix_parts_serial_key on parts ((translate(serial, 'ILZSGBOQ0-._', '112568')));
            create index ix_lots_number_key on lots ((translate(number, 'ILZSGBOQ0-._', '112568')));

            do $$
            begin
                if not exists (select from pg_available_extensions where name = 'pg_trgm') then
                    raise notice 'pg_trgm is not here: searching by fragment reads whole tables';
                    return;
                end if;
                create extension if not exists pg_trgm;
                create index ix_parts_serial_fragment on parts using gin (serial gin_trgm_ops);
                create index ix_lots_number_fragment on lots using gin (number gin_trgm_ops);
                create index ix_lots_supplier_lot_fragment on lots using gin (supplier_lot gin_trgm_ops);
                create index ix_shipments_reference_fragment on shipments using gin (customer_reference gin_trgm_ops);
                create index ix_unit_returns_reference_fragment on unit_returns using gin (customer_reference gin_trgm_ops);
            exception when insufficient_privilege then
                raise notice 'pg_trgm may not be installed by this role: searching by fragment reads whole tables';
            end $$;
            """
        );
}
