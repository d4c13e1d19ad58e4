using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <summary>
    /// Serials by how they begin, and everything that is searched by fragment by its trigrams. A server without the extension pg_trgm
    /// (a package of its own on some systems) finds the same, only slower.
    /// </summary>
    public partial class SearchIndexes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder) => migrationBuilder.Sql("""
            create index ix_parts_serial_beginning on parts (serial text_pattern_ops);

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
            """);

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) => migrationBuilder.Sql("""
            drop index if exists ix_parts_serial_beginning, ix_parts_serial_fragment, ix_lots_number_fragment, ix_lots_supplier_lot_fragment,
                ix_shipments_reference_fragment, ix_unit_returns_reference_fragment;
            """);
    }
}
