using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class FilmReachOnTheWay : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "film_reaches");

            // What the films got into is part of their way now: they are followed anew when the tables are up to date.
            migrationBuilder.Sql("truncate film_fates, film_paths;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "film_reaches",
                columns: table => new
                {
                    diaphragm_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    container_id = table.Column<Guid>(type: "uuid", nullable: false),
                    container_kind = table.Column<string>(type: "text", nullable: false),
                    model = table.Column<string>(type: "text", nullable: false),
                    returned = table.Column<bool>(type: "boolean", nullable: false),
                    shipped = table.Column<bool>(type: "boolean", nullable: false),
                    since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_film_reaches", x => new { x.diaphragm_id, x.lot_id, x.container_id });
                });

            migrationBuilder.CreateIndex(
                name: "ix_film_reaches_since",
                table: "film_reaches",
                column: "since");
        }
    }
}
