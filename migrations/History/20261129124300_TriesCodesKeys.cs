using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class TriesCodesKeys : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "sign_in_failures");

            // What was kept for keys so far belongs to no caller that is known, and from the hashes kept with it PINs can be found by trying them all.
            migrationBuilder.Sql("""
                alter table idempotent_answers disable trigger never_changed;
                truncate idempotent_answers;
                alter table idempotent_answers enable trigger never_changed;
                """);

            migrationBuilder.DropPrimaryKey(
                name: "pk_idempotent_answers",
                table: "idempotent_answers");

            migrationBuilder.AddColumn<string>(
                name: "caller",
                table: "idempotent_answers",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddPrimaryKey(
                name: "pk_idempotent_answers",
                table: "idempotent_answers",
                columns: new[] { "caller", "key" });

            migrationBuilder.CreateTable(
                name: "pin_codes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    expires_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pin_codes", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "pin_tries",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    place = table.Column<string>(type: "text", nullable: false),
                    tried_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    judged = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pin_tries", x => x.id);
                });

            migrationBuilder.CreateIndex(
                name: "ix_sign_in_sessions_person_id",
                table: "sign_in_sessions",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_pin_codes_person_id",
                table: "pin_codes",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_pin_tries_place_tried_at",
                table: "pin_tries",
                columns: new[] { "place", "tried_at" });

            migrationBuilder.CreateIndex(
                name: "ix_pin_tries_tried_at",
                table: "pin_tries",
                column: "tried_at");

            Guards.Protect(migrationBuilder, "pin_codes");
            migrationBuilder.Sql("""
                revoke select on pin_codes from traceability_reader;
                grant select, insert, update, delete on pin_tries to traceability_app;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "pin_codes");

            migrationBuilder.DropTable(
                name: "pin_tries");

            migrationBuilder.DropIndex(
                name: "ix_sign_in_sessions_person_id",
                table: "sign_in_sessions");

            migrationBuilder.DropPrimaryKey(
                name: "pk_idempotent_answers",
                table: "idempotent_answers");

            migrationBuilder.DropColumn(
                name: "caller",
                table: "idempotent_answers");

            migrationBuilder.AddPrimaryKey(
                name: "pk_idempotent_answers",
                table: "idempotent_answers",
                column: "key");

            migrationBuilder.CreateTable(
                name: "sign_in_failures",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    badge = table.Column<string>(type: "text", nullable: false),
                    failed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_in_failures", x => x.id);
                });

            migrationBuilder.CreateIndex(
                name: "ix_sign_in_failures_badge_failed_at",
                table: "sign_in_failures",
                columns: new[] { "badge", "failed_at" });
        }
    }
}
