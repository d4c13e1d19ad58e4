using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class DoubtDecisions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_instrument_checks_instrument_id",
                table: "instrument_checks");

            migrationBuilder.CreateTable(
                name: "doubt_decisions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    return_to = table.Column<string>(type: "text", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_doubt_decisions", x => x.id);
                    table.ForeignKey(
                        name: "fk_doubt_decisions_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_instrument_checks_failed",
                table: "instrument_checks",
                column: "instrument_id",
                filter: "not passed");

            migrationBuilder.CreateIndex(
                name: "ix_instrument_checks_instrument_id_occurred_at",
                table: "instrument_checks",
                columns: new[] { "instrument_id", "occurred_at" });

            migrationBuilder.CreateIndex(
                name: "ix_doubt_decisions_instrument_id",
                table: "doubt_decisions",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_doubt_decisions_part_id",
                table: "doubt_decisions",
                column: "part_id");

            Guards.Protect(migrationBuilder, "doubt_decisions");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "doubt_decisions");

            migrationBuilder.DropIndex(
                name: "ix_instrument_checks_failed",
                table: "instrument_checks");

            migrationBuilder.DropIndex(
                name: "ix_instrument_checks_instrument_id_occurred_at",
                table: "instrument_checks");

            migrationBuilder.CreateIndex(
                name: "ix_instrument_checks_instrument_id",
                table: "instrument_checks",
                column: "instrument_id");
        }
    }
}
