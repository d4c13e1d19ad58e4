using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class FilmFates : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "film_fates",
                columns: table => new
                {
                    diaphragm_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    model = table.Column<string>(type: "text", nullable: false),
                    fitted_by = table.Column<Guid>(type: "uuid", nullable: false),
                    path_id = table.Column<Guid>(type: "uuid", nullable: false),
                    failed_at = table.Column<DateTimeOffset[]>(type: "timestamp with time zone[]", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_film_fates", x => new { x.diaphragm_id, x.lot_id });
                });

            migrationBuilder.CreateTable(
                name: "film_paths",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    body = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_film_paths", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "film_reaches",
                columns: table => new
                {
                    diaphragm_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    container_id = table.Column<Guid>(type: "uuid", nullable: false),
                    since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    model = table.Column<string>(type: "text", nullable: false),
                    container_kind = table.Column<string>(type: "text", nullable: false),
                    shipped = table.Column<bool>(type: "boolean", nullable: false),
                    returned = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_film_reaches", x => new { x.diaphragm_id, x.lot_id, x.container_id });
                });

            migrationBuilder.CreateIndex(
                name: "ix_film_fates_since",
                table: "film_fates",
                column: "since");

            migrationBuilder.CreateIndex(
                name: "ix_film_reaches_since",
                table: "film_reaches",
                column: "since");

            Guards.Derive(migrationBuilder, "film_fates", "film_reaches", "film_paths");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "film_fates");

            migrationBuilder.DropTable(
                name: "film_paths");

            migrationBuilder.DropTable(
                name: "film_reaches");
        }
    }
}
