using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class NoticeAcknowledgements : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "notice_acknowledgements",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    key = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: true),
                    model = table.Column<string>(type: "text", nullable: true),
                    stage = table.Column<string>(type: "text", nullable: true),
                    characteristic = table.Column<string>(type: "text", nullable: true),
                    rule = table.Column<int>(type: "integer", nullable: true),
                    film_lot = table.Column<string>(type: "text", nullable: true),
                    reading_id = table.Column<Guid>(type: "uuid", nullable: true),
                    known_until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    points = table.Column<int>(type: "integer", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_notice_acknowledgements", x => x.id);
                });

            migrationBuilder.CreateIndex(
                name: "ix_notice_acknowledgements_key",
                table: "notice_acknowledgements",
                column: "key",
                unique: true);

            Guards.Protect(migrationBuilder, "notice_acknowledgements");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "notice_acknowledgements");
        }
    }
}
