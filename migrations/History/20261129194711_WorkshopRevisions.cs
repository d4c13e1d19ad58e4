using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class WorkshopRevisions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "second_sign_ins",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: true),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    rule = table.Column<string>(type: "text", nullable: false),
                    stage = table.Column<string>(type: "text", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_second_sign_ins", x => x.id);
                    table.ForeignKey(
                        name: "fk_second_sign_ins_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "workshop_revisions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    address = table.Column<string>(type: "text", nullable: true),
                    contact = table.Column<string>(type: "text", nullable: true),
                    time_zone = table.Column<string>(type: "text", nullable: false),
                    public_url = table.Column<string>(type: "text", nullable: true),
                    language = table.Column<string>(type: "text", nullable: false),
                    day_style = table.Column<string>(type: "text", nullable: false),
                    warranty_terms = table.Column<string>(type: "text", nullable: true),
                    shows_suppliers = table.Column<bool>(type: "boolean", nullable: false),
                    shows_lot_numbers = table.Column<bool>(type: "boolean", nullable: false),
                    shows_reworks = table.Column<bool>(type: "boolean", nullable: false),
                    names = table.Column<string>(type: "text", nullable: false),
                    single_handed = table.Column<bool>(type: "boolean", nullable: false),
                    logo_sha256 = table.Column<string>(type: "text", nullable: true),
                    logo_type = table.Column<string>(type: "text", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_workshop_revisions", x => x.id);
                });

            migrationBuilder.CreateIndex(
                name: "ix_second_sign_ins_part_id",
                table: "second_sign_ins",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_workshop_revisions_revision",
                table: "workshop_revisions",
                column: "revision",
                unique: true);
            Guards.Protect(migrationBuilder, "workshop_revisions", "second_sign_ins");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "second_sign_ins");

            migrationBuilder.DropTable(
                name: "workshop_revisions");
        }
    }
}
