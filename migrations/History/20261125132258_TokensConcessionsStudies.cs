using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class TokensConcessionsStudies : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "permit_id",
                table: "dispositions",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "concession_permits",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(type: "text", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    code = table.Column<string>(type: "text", nullable: true),
                    stage = table.Column<string>(type: "text", nullable: true),
                    most_parts = table.Column<int>(type: "integer", nullable: true),
                    valid_until = table.Column<DateOnly>(type: "date", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_concession_permits", x => x.id);
                    table.ForeignKey(
                        name: "fk_concession_permits_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "instrument_tokens",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instrument_tokens", x => x.id);
                    table.ForeignKey(
                        name: "fk_instrument_tokens_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "measurement_studies",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(type: "text", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    characteristic = table.Column<string>(type: "text", nullable: false),
                    unit = table.Column<string>(type: "text", nullable: false),
                    instrument_kind = table.Column<string>(type: "text", nullable: false),
                    pieces = table.Column<string[]>(type: "text[]", nullable: false),
                    people = table.Column<string[]>(type: "text[]", nullable: false),
                    repeats = table.Column<int>(type: "integer", nullable: false),
                    lower = table.Column<decimal>(type: "numeric", nullable: true),
                    upper = table.Column<decimal>(type: "numeric", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_measurement_studies", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "instrument_token_revocations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    token_id = table.Column<Guid>(type: "uuid", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instrument_token_revocations", x => x.id);
                    table.ForeignKey(
                        name: "fk_instrument_token_revocations_instrument_tokens_token_id",
                        column: x => x.token_id,
                        principalTable: "instrument_tokens",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "measurement_study_readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    study_id = table.Column<Guid>(type: "uuid", nullable: false),
                    piece = table.Column<string>(type: "text", nullable: false),
                    person = table.Column<string>(type: "text", nullable: false),
                    trial = table.Column<int>(type: "integer", nullable: false),
                    value = table.Column<decimal>(type: "numeric", nullable: false),
                    digits = table.Column<string>(type: "text", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_measurement_study_readings", x => x.id);
                    table.ForeignKey(
                        name: "fk_measurement_study_readings_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_measurement_study_readings_measurement_studies_study_id",
                        column: x => x.study_id,
                        principalTable: "measurement_studies",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_dispositions_permit_id",
                table: "dispositions",
                column: "permit_id");

            migrationBuilder.CreateIndex(
                name: "ix_concession_permits_lot_id",
                table: "concession_permits",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_concession_permits_number",
                table: "concession_permits",
                column: "number",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_instrument_token_revocations_token_id",
                table: "instrument_token_revocations",
                column: "token_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_instrument_tokens_hash",
                table: "instrument_tokens",
                column: "hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_instrument_tokens_instrument_id",
                table: "instrument_tokens",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_measurement_studies_number",
                table: "measurement_studies",
                column: "number",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_measurement_study_readings_instrument_id",
                table: "measurement_study_readings",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_measurement_study_readings_study_id",
                table: "measurement_study_readings",
                column: "study_id");

            migrationBuilder.AddForeignKey(
                name: "fk_dispositions_concession_permits_permit_id",
                table: "dispositions",
                column: "permit_id",
                principalTable: "concession_permits",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            Guards.Protect(migrationBuilder, "instrument_tokens", "instrument_token_revocations", "concession_permits", "measurement_studies", "measurement_study_readings");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_dispositions_concession_permits_permit_id",
                table: "dispositions");

            migrationBuilder.DropTable(
                name: "concession_permits");

            migrationBuilder.DropTable(
                name: "instrument_token_revocations");

            migrationBuilder.DropTable(
                name: "measurement_study_readings");

            migrationBuilder.DropTable(
                name: "instrument_tokens");

            migrationBuilder.DropTable(
                name: "measurement_studies");

            migrationBuilder.DropIndex(
                name: "ix_dispositions_permit_id",
                table: "dispositions");

            migrationBuilder.DropColumn(
                name: "permit_id",
                table: "dispositions");
        }
    }
}
