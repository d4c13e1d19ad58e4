using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <summary>What was retired or taken back, names corrected, kinds as lists, calibrations and checks corrected.</summary>
    public partial class TakingBack : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "replaces",
                table: "instrument_checks",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "replaces_because",
                table: "instrument_checks",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "replaces",
                table: "calibrations",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "replaces_because",
                table: "calibrations",
                type: "text",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "name_corrections",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_name_corrections", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "setup_decisions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sort = table.Column<string>(type: "text", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_setup_decisions", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "workshop_kinds",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    of = table.Column<string>(type: "text", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_workshop_kinds", x => x.id);
                });

            migrationBuilder.CreateIndex(
                name: "ix_instrument_checks_replaces",
                table: "instrument_checks",
                column: "replaces",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_calibrations_replaces",
                table: "calibrations",
                column: "replaces",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_name_corrections_subject_id_recorded_at",
                table: "name_corrections",
                columns: new[] { "subject_id", "recorded_at" });

            migrationBuilder.CreateIndex(
                name: "ix_setup_decisions_subject_id_recorded_at",
                table: "setup_decisions",
                columns: new[] { "subject_id", "recorded_at" });

            migrationBuilder.CreateIndex(
                name: "ix_workshop_kinds_of_code",
                table: "workshop_kinds",
                columns: new[] { "of", "code" },
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "fk_calibrations_calibrations_replaces",
                table: "calibrations",
                column: "replaces",
                principalTable: "calibrations",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_instrument_checks_instrument_checks_replaces",
                table: "instrument_checks",
                column: "replaces",
                principalTable: "instrument_checks",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            Guards.Protect(migrationBuilder, "setup_decisions", "name_corrections", "workshop_kinds");
        }
    }
}
