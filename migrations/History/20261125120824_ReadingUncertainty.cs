using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class ReadingUncertainty : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<decimal>(
                name: "expanded_uncertainty",
                table: "readings",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "guarded",
                table: "readings",
                type: "boolean",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "expanded_uncertainty",
                table: "readings");

            migrationBuilder.DropColumn(
                name: "guarded",
                table: "readings");
        }
    }
}
