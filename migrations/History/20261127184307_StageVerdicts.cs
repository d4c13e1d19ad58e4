using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <inheritdoc />
    public partial class StageVerdicts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "route_id",
                table: "part_standings",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"));

            migrationBuilder.CreateTable(
                name: "stage_verdicts",
                columns: table => new
                {
                    attempt_id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    serial = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    model = table.Column<string>(type: "text", nullable: false),
                    stage = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    place = table.Column<string>(type: "text", nullable: false),
                    begun_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    first = table.Column<bool>(type: "boolean", nullable: false),
                    passed = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stage_verdicts", x => x.attempt_id);
                });

            // What the facts of an older store say, in their words of that day; the service writes the rows from the part's file, and rebuild compares.
            migrationBuilder.Sql("""
                insert into stage_verdicts (attempt_id, part_id, serial, kind, model, stage, number, place, begun_at, ended_at, first, passed)
                select a.id, p.id, p.serial, p.kind, p.model, a.stage, a.number,
                    case when p.kind = 'unit' then 'final'
                        when e.method = 'climate-soak' then 'soak'
                        when e.method like 'insulation%' then 'insulation'
                        when p.kind = 'capsule' and (e.method like 'response%' or e.method like 'acoustic%' or a.stage like 'acoustic%') then 'acoustic'
                        else p.kind end,
                    a.occurred_at, e.occurred_at,
                    a.number = 1 or not exists (
                        select from attempts earlier join attempt_endings ended on ended.attempt_id = earlier.id
                        where earlier.part_id = a.part_id and earlier.stage = a.stage and earlier.number < a.number and ended.verdict is not null),
                    case when exists (select from corrections k where k.part_id = a.part_id)
                        then not e.failed_by_finding and not exists (
                            select from readings r where r.attempt_id = a.id
                            and not coalesce((select c.met from corrections c where c.reading_id = r.id order by c.recorded_at desc, c.id desc limit 1), r.met))
                        else e.verdict = 'Pass' end
                from attempts a
                join attempt_endings e on e.attempt_id = a.id and e.verdict is not null
                join parts p on p.id = a.part_id
                order by a.occurred_at, a.id;

                update part_standings s set route_id = p.route_id from parts p where p.id = s.part_id;
                alter table part_standings alter column route_id drop default;
                """);
            Guards.Derive(migrationBuilder, "stage_verdicts");

            migrationBuilder.CreateIndex(
                name: "ix_part_standings_route_id_finished_state",
                table: "part_standings",
                columns: new[] { "route_id", "finished", "state" });

            migrationBuilder.CreateIndex(
                name: "ix_stage_verdicts_begun_at",
                table: "stage_verdicts",
                column: "begun_at");

            migrationBuilder.CreateIndex(
                name: "ix_stage_verdicts_part_id",
                table: "stage_verdicts",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_stage_verdicts_stage_begun_at",
                table: "stage_verdicts",
                columns: new[] { "stage", "begun_at" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "stage_verdicts");

            migrationBuilder.DropIndex(
                name: "ix_part_standings_route_id_finished_state",
                table: "part_standings");

            migrationBuilder.DropColumn(
                name: "route_id",
                table: "part_standings");
        }
    }
}
