using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class FilmStages : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // The ways of films say other things now: how many parts reached a stage with them, counted once. They are followed anew when the tables are up to date.
            migrationBuilder.Sql("truncate film_fates, film_paths;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) => migrationBuilder.Sql("truncate film_fates, film_paths;");
    }
}
