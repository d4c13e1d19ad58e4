using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <summary>Serials and lot numbers by their key, so that one that is written otherwise, or with one mistake, is found among millions.</summary>
    public partial class CodeKeys : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder) => migrationBuilder.Sql("""
            create index ix_parts_serial_key on parts ((translate(serial, 'ILZSGBOQ0-._', '112568')));
            create index ix_lots_number_key on lots ((translate(number, 'ILZSGBOQ0-._', '112568')));
            """);

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) => migrationBuilder.Sql("drop index if exists ix_parts_serial_key, ix_lots_number_key;");
    }
}
