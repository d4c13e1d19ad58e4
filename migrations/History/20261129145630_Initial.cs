using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Traceability.Migrations.History
{
    /// <summary>Everything there is at the first release. It is never taken back, so there is no way down from it.</summary>
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "carrier_placements",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    carrier_code = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_carrier_placements", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "carrier_releases",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    carrier_code = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_carrier_releases", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "carriers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_carriers", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "containments",
                columns: table => new
                {
                    container_id = table.Column<Guid>(type: "uuid", nullable: false),
                    fitting_id = table.Column<Guid>(type: "uuid", nullable: false),
                    present_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    item_id = table.Column<Guid>(type: "uuid", nullable: false),
                    item_is_lot = table.Column<bool>(type: "boolean", nullable: false),
                    depth = table.Column<int>(type: "integer", nullable: false),
                    present_until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_containments", x => new { x.container_id, x.fitting_id, x.present_from });
                });

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    friendly_name = table.Column<string>(type: "text", nullable: true),
                    xml = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "film_fates",
                columns: table => new
                {
                    diaphragm_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    model = table.Column<string>(type: "text", nullable: false),
                    fitted_by = table.Column<Guid>(type: "uuid", nullable: false),
                    path_id = table.Column<Guid>(type: "uuid", nullable: false),
                    failed_at = table.Column<DateTimeOffset[]>(type: "timestamp with time zone[]", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_film_fates", x => new { x.diaphragm_id, x.lot_id });
                });

            migrationBuilder.CreateTable(
                name: "film_paths",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    body = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_film_paths", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "holds",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    part_id = table.Column<Guid>(type: "uuid", nullable: true),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_holds", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "idempotent_answers",
                columns: table => new
                {
                    caller = table.Column<string>(type: "text", nullable: false),
                    key = table.Column<string>(type: "text", nullable: false),
                    request_hash = table.Column<string>(type: "text", nullable: false),
                    status = table.Column<int>(type: "integer", nullable: false),
                    body = table.Column<string>(type: "text", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_idempotent_answers", x => new { x.caller, x.key });
                });

            migrationBuilder.CreateTable(
                name: "instruments",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    check_nominal = table.Column<decimal>(type: "numeric", nullable: true),
                    check_tolerance = table.Column<decimal>(type: "numeric", nullable: true),
                    check_unit = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instruments", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "ledger_entries",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sequence = table.Column<long>(type: "bigint", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    body = table.Column<string>(type: "text", nullable: false),
                    previous_hash = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ledger_entries", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "ledger_heads",
                columns: table => new
                {
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sequence = table.Column<long>(type: "bigint", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ledger_heads", x => x.subject_id);
                });

            migrationBuilder.CreateTable(
                name: "loads",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    stage = table.Column<string>(type: "text", nullable: false),
                    station = table.Column<string>(type: "text", nullable: false),
                    instruments = table.Column<string[]>(type: "text[]", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_loads", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "lots",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    supplier = table.Column<string>(type: "text", nullable: false),
                    supplier_lot = table.Column<string>(type: "text", nullable: false),
                    quantity = table.Column<decimal>(type: "numeric", nullable: false),
                    unit = table.Column<string>(type: "text", nullable: false),
                    received_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    mixed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    pot_life_minutes = table.Column<int>(type: "integer", nullable: true),
                    film_base_thickness_um = table.Column<decimal>(type: "numeric", nullable: true),
                    film_metal_thickness_nm = table.Column<decimal>(type: "numeric", nullable: true),
                    film_sheet_resistance_ohm = table.Column<decimal>(type: "numeric", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_lots", x => x.id);
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

            migrationBuilder.CreateTable(
                name: "part_standings",
                columns: table => new
                {
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    route_id = table.Column<Guid>(type: "uuid", nullable: false),
                    stage = table.Column<string>(type: "text", nullable: true),
                    state = table.Column<string>(type: "text", nullable: false),
                    finished = table.Column<bool>(type: "boolean", nullable: false),
                    carrier_code = table.Column<string>(type: "text", nullable: true),
                    fitted_in_id = table.Column<Guid>(type: "uuid", nullable: true),
                    open_attempt_id = table.Column<Guid>(type: "uuid", nullable: true),
                    open_attempt_by = table.Column<Guid>(type: "uuid", nullable: true),
                    changed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_part_standings", x => x.part_id);
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    badge = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => x.id);
                });

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
                name: "pin_settings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pin_settings", x => x.id);
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

            migrationBuilder.CreateTable(
                name: "qualification_grants",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    given = table.Column<bool>(type: "boolean", nullable: false),
                    valid_until = table.Column<DateOnly>(type: "date", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_qualification_grants", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "return_closings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    return_id = table.Column<Guid>(type: "uuid", nullable: false),
                    action = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_return_closings", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "return_findings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    return_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    description = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_return_findings", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "role_grants",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    role = table.Column<string>(type: "text", nullable: false),
                    given = table.Column<bool>(type: "boolean", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_role_grants", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "route_revisions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    model = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    text = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    author = table.Column<string>(type: "text", nullable: false),
                    approved_by = table.Column<string>(type: "text", nullable: false),
                    effective_from = table.Column<DateOnly>(type: "date", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_route_revisions", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "sign_in_sessions",
                columns: table => new
                {
                    token_hash = table.Column<string>(type: "text", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    started_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_in_sessions", x => x.token_hash);
                });

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

            migrationBuilder.CreateTable(
                name: "station_screens",
                columns: table => new
                {
                    screen_id = table.Column<string>(type: "text", nullable: false),
                    session = table.Column<string>(type: "text", nullable: false),
                    changed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_station_screens", x => x.screen_id);
                });

            migrationBuilder.CreateTable(
                name: "stations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stations", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "stored_files",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_files", x => x.sha256);
                });

            migrationBuilder.CreateTable(
                name: "workshop_settings",
                columns: table => new
                {
                    name = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_workshop_settings", x => x.name);
                });

            migrationBuilder.CreateTable(
                name: "hold_releases",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hold_id = table.Column<Guid>(type: "uuid", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_hold_releases", x => x.id);
                    table.ForeignKey(
                        name: "fk_hold_releases_holds_hold_id",
                        column: x => x.hold_id,
                        principalTable: "holds",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "calibrations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    calibrated_on = table.Column<DateOnly>(type: "date", nullable: false),
                    due_on = table.Column<DateOnly>(type: "date", nullable: false),
                    reference = table.Column<string>(type: "text", nullable: false),
                    passed = table.Column<bool>(type: "boolean", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    constants = table.Column<string>(type: "jsonb", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_calibrations", x => x.id);
                    table.ForeignKey(
                        name: "fk_calibrations_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

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

            migrationBuilder.CreateTable(
                name: "instrument_checks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    nominal = table.Column<decimal>(type: "numeric", nullable: true),
                    value = table.Column<decimal>(type: "numeric", nullable: true),
                    passed = table.Column<bool>(type: "boolean", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instrument_checks", x => x.id);
                    table.ForeignKey(
                        name: "fk_instrument_checks_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
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
                name: "lot_decisions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_lot_decisions", x => x.id);
                    table.ForeignKey(
                        name: "fk_lot_decisions_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
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

            migrationBuilder.CreateTable(
                name: "parts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    serial = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    model = table.Column<string>(type: "text", nullable: false),
                    route_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_parts", x => x.id);
                    table.ForeignKey(
                        name: "fk_parts_route_revisions_route_id",
                        column: x => x.route_id,
                        principalTable: "route_revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "route_approvals",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    route_id = table.Column<Guid>(type: "uuid", nullable: false),
                    effective_from = table.Column<DateOnly>(type: "date", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_route_approvals", x => x.id);
                    table.ForeignKey(
                        name: "fk_route_approvals_route_revisions_route_id",
                        column: x => x.route_id,
                        principalTable: "route_revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
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
                name: "attempts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    stage = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    station = table.Column<string>(type: "text", nullable: false),
                    load_id = table.Column<Guid>(type: "uuid", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_attempts", x => x.id);
                    table.ForeignKey(
                        name: "fk_attempts_loads_load_id",
                        column: x => x.load_id,
                        principalTable: "loads",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_attempts_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "certificates",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    public_id = table.Column<string>(type: "text", nullable: false),
                    document_sha256 = table.Column<string>(type: "text", nullable: false),
                    pdf_sha256 = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_certificates", x => x.id);
                    table.ForeignKey(
                        name: "fk_certificates_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "nonconformities",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    attempt_id = table.Column<Guid>(type: "uuid", nullable: true),
                    stage = table.Column<string>(type: "text", nullable: true),
                    code = table.Column<string>(type: "text", nullable: false),
                    description = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_nonconformities", x => x.id);
                    table.ForeignKey(
                        name: "fk_nonconformities_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "shipments",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    customer_reference = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shipments", x => x.id);
                    table.ForeignKey(
                        name: "fk_shipments_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "unit_returns",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    complaint = table.Column<string>(type: "text", nullable: false),
                    customer_reference = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_returns", x => x.id);
                    table.ForeignKey(
                        name: "fk_unit_returns_parts_part_id",
                        column: x => x.part_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "attempt_endings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    attempt_id = table.Column<Guid>(type: "uuid", nullable: false),
                    verdict = table.Column<string>(type: "text", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    method = table.Column<string>(type: "text", nullable: true),
                    method_version = table.Column<int>(type: "integer", nullable: true),
                    findings = table.Column<string[]>(type: "text[]", nullable: false),
                    failed_by_finding = table.Column<bool>(type: "boolean", nullable: false),
                    counts_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_attempt_endings", x => x.id);
                    table.ForeignKey(
                        name: "fk_attempt_endings_attempts_attempt_id",
                        column: x => x.attempt_id,
                        principalTable: "attempts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "evidence",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: true),
                    attempt_id = table.Column<Guid>(type: "uuid", nullable: true),
                    load_id = table.Column<Guid>(type: "uuid", nullable: true),
                    name = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    media_type = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    length_bytes = table.Column<long>(type: "bigint", nullable: false),
                    full_scale_v = table.Column<decimal>(type: "numeric", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_evidence", x => x.id);
                    table.ForeignKey(
                        name: "fk_evidence_attempts_attempt_id",
                        column: x => x.attempt_id,
                        principalTable: "attempts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_evidence_loads_load_id",
                        column: x => x.load_id,
                        principalTable: "loads",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "fittings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    attempt_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<string>(type: "text", nullable: false),
                    child_id = table.Column<Guid>(type: "uuid", nullable: true),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    quantity = table.Column<decimal>(type: "numeric", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_fittings", x => x.id);
                    table.ForeignKey(
                        name: "fk_fittings_attempts_attempt_id",
                        column: x => x.attempt_id,
                        principalTable: "attempts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_fittings_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_fittings_parts_child_id",
                        column: x => x.child_id,
                        principalTable: "parts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "instrument_uses",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    attempt_id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_id = table.Column<Guid>(type: "uuid", nullable: false),
                    instrument_code = table.Column<string>(type: "text", nullable: false),
                    instrument_kind = table.Column<string>(type: "text", nullable: false),
                    calibration_id = table.Column<Guid>(type: "uuid", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instrument_uses", x => x.id);
                    table.ForeignKey(
                        name: "fk_instrument_uses_attempts_attempt_id",
                        column: x => x.attempt_id,
                        principalTable: "attempts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_instrument_uses_instruments_instrument_id",
                        column: x => x.instrument_id,
                        principalTable: "instruments",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    attempt_id = table.Column<Guid>(type: "uuid", nullable: false),
                    characteristic = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<decimal>(type: "numeric", nullable: false),
                    digits = table.Column<string>(type: "text", nullable: false),
                    unit = table.Column<string>(type: "text", nullable: false),
                    nominal = table.Column<decimal>(type: "numeric", nullable: true),
                    lower = table.Column<decimal>(type: "numeric", nullable: true),
                    upper = table.Column<decimal>(type: "numeric", nullable: true),
                    met = table.Column<bool>(type: "boolean", nullable: false),
                    source = table.Column<string>(type: "text", nullable: false),
                    method = table.Column<string>(type: "text", nullable: true),
                    method_version = table.Column<int>(type: "integer", nullable: true),
                    evidence_id = table.Column<Guid>(type: "uuid", nullable: true),
                    expanded_uncertainty = table.Column<decimal>(type: "numeric", nullable: true),
                    guarded = table.Column<bool>(type: "boolean", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_readings", x => x.id);
                    table.ForeignKey(
                        name: "fk_readings_attempts_attempt_id",
                        column: x => x.attempt_id,
                        principalTable: "attempts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "dispositions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    nonconformity_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    return_to = table.Column<string>(type: "text", nullable: true),
                    limited_to = table.Column<string>(type: "text", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: false),
                    permit_id = table.Column<Guid>(type: "uuid", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_dispositions", x => x.id);
                    table.ForeignKey(
                        name: "fk_dispositions_concession_permits_permit_id",
                        column: x => x.permit_id,
                        principalTable: "concession_permits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_dispositions_nonconformities_nonconformity_id",
                        column: x => x.nonconformity_id,
                        principalTable: "nonconformities",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "return_outcomes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    return_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_return_outcomes", x => x.id);
                    table.ForeignKey(
                        name: "fk_return_outcomes_unit_returns_return_id",
                        column: x => x.return_id,
                        principalTable: "unit_returns",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "removals",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    fitting_id = table.Column<Guid>(type: "uuid", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_removals", x => x.id);
                    table.ForeignKey(
                        name: "fk_removals_fittings_fitting_id",
                        column: x => x.fitting_id,
                        principalTable: "fittings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "corrections",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    reading_id = table.Column<Guid>(type: "uuid", nullable: false),
                    value = table.Column<decimal>(type: "numeric", nullable: false),
                    digits = table.Column<string>(type: "text", nullable: false),
                    met = table.Column<bool>(type: "boolean", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    occurred_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_corrections", x => x.id);
                    table.ForeignKey(
                        name: "fk_corrections_readings_reading_id",
                        column: x => x.reading_id,
                        principalTable: "readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_attempt_endings_attempt_id",
                table: "attempt_endings",
                column: "attempt_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_attempt_endings_failed",
                table: "attempt_endings",
                column: "occurred_at",
                filter: "verdict = 'Fail'");

            migrationBuilder.CreateIndex(
                name: "ix_attempt_endings_part_id",
                table: "attempt_endings",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_attempts_load_id",
                table: "attempts",
                column: "load_id");

            migrationBuilder.CreateIndex(
                name: "ix_attempts_part_id",
                table: "attempts",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_attempts_part_id_stage_number",
                table: "attempts",
                columns: new[] { "part_id", "stage", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_attempts_stage_occurred_at",
                table: "attempts",
                columns: new[] { "stage", "occurred_at" });

            migrationBuilder.CreateIndex(
                name: "ix_calibrations_instrument_id",
                table: "calibrations",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_carrier_placements_part_id",
                table: "carrier_placements",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_carrier_releases_part_id",
                table: "carrier_releases",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_carriers_code",
                table: "carriers",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_certificates_part_id",
                table: "certificates",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_certificates_part_id_revision",
                table: "certificates",
                columns: new[] { "part_id", "revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_certificates_public_id",
                table: "certificates",
                column: "public_id",
                unique: true);

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
                name: "ix_containments_item_id_item_is_lot",
                table: "containments",
                columns: new[] { "item_id", "item_is_lot" });

            migrationBuilder.CreateIndex(
                name: "ux_containments_one_parent",
                table: "containments",
                column: "item_id",
                unique: true,
                filter: "depth = 1 and not item_is_lot and present_until is null");

            migrationBuilder.CreateIndex(
                name: "ix_corrections_part_id",
                table: "corrections",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_corrections_reading_id",
                table: "corrections",
                column: "reading_id");

            migrationBuilder.CreateIndex(
                name: "ix_dispositions_nonconformity_id",
                table: "dispositions",
                column: "nonconformity_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_dispositions_part_id",
                table: "dispositions",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_dispositions_permit_id",
                table: "dispositions",
                column: "permit_id");

            migrationBuilder.CreateIndex(
                name: "ix_doubt_decisions_instrument_id",
                table: "doubt_decisions",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_doubt_decisions_part_id",
                table: "doubt_decisions",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_evidence_attempt_id",
                table: "evidence",
                column: "attempt_id");

            migrationBuilder.CreateIndex(
                name: "ix_evidence_load_id",
                table: "evidence",
                column: "load_id");

            migrationBuilder.CreateIndex(
                name: "ix_evidence_part_id",
                table: "evidence",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_film_fates_since",
                table: "film_fates",
                column: "since");

            migrationBuilder.CreateIndex(
                name: "ix_fittings_attempt_id",
                table: "fittings",
                column: "attempt_id");

            migrationBuilder.CreateIndex(
                name: "ix_fittings_child_id",
                table: "fittings",
                column: "child_id");

            migrationBuilder.CreateIndex(
                name: "ix_fittings_lot_id",
                table: "fittings",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_fittings_part_id",
                table: "fittings",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_hold_releases_hold_id",
                table: "hold_releases",
                column: "hold_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_holds_instrument_id",
                table: "holds",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_holds_lot_id",
                table: "holds",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_holds_part_id",
                table: "holds",
                column: "part_id");

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
                name: "ix_instrument_uses_attempt_id",
                table: "instrument_uses",
                column: "attempt_id");

            migrationBuilder.CreateIndex(
                name: "ix_instrument_uses_instrument_id",
                table: "instrument_uses",
                column: "instrument_id");

            migrationBuilder.CreateIndex(
                name: "ix_instrument_uses_part_id",
                table: "instrument_uses",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_instruments_code",
                table: "instruments",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_ledger_entries_subject_id_sequence",
                table: "ledger_entries",
                columns: new[] { "subject_id", "sequence" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_lot_decisions_lot_id",
                table: "lot_decisions",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_lots_number",
                table: "lots",
                column: "number",
                unique: true);

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

            migrationBuilder.CreateIndex(
                name: "ix_nonconformities_part_id",
                table: "nonconformities",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_notice_acknowledgements_key",
                table: "notice_acknowledgements",
                column: "key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_part_standings_carrier_code",
                table: "part_standings",
                column: "carrier_code",
                unique: true,
                filter: "carrier_code is not null");

            migrationBuilder.CreateIndex(
                name: "ix_part_standings_open_attempt_by",
                table: "part_standings",
                column: "open_attempt_by",
                filter: "open_attempt_by is not null");

            migrationBuilder.CreateIndex(
                name: "ix_part_standings_route_id_finished_state",
                table: "part_standings",
                columns: new[] { "route_id", "finished", "state" });

            migrationBuilder.CreateIndex(
                name: "ix_part_standings_state",
                table: "part_standings",
                column: "state");

            migrationBuilder.CreateIndex(
                name: "ix_parts_route_id",
                table: "parts",
                column: "route_id");

            migrationBuilder.CreateIndex(
                name: "ix_parts_serial",
                table: "parts",
                column: "serial",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_people_badge",
                table: "people",
                column: "badge",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_pin_codes_person_id",
                table: "pin_codes",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_pin_settings_person_id",
                table: "pin_settings",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_pin_tries_place_tried_at",
                table: "pin_tries",
                columns: new[] { "place", "tried_at" });

            migrationBuilder.CreateIndex(
                name: "ix_pin_tries_tried_at",
                table: "pin_tries",
                column: "tried_at");

            migrationBuilder.CreateIndex(
                name: "ix_qualification_grants_person_id",
                table: "qualification_grants",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_readings_attempt_id",
                table: "readings",
                column: "attempt_id");

            migrationBuilder.CreateIndex(
                name: "ix_readings_part_id",
                table: "readings",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_removals_fitting_id",
                table: "removals",
                column: "fitting_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_removals_part_id",
                table: "removals",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_return_closings_part_id",
                table: "return_closings",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_return_closings_return_id",
                table: "return_closings",
                column: "return_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_return_findings_part_id",
                table: "return_findings",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_return_outcomes_part_id",
                table: "return_outcomes",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_return_outcomes_return_id",
                table: "return_outcomes",
                column: "return_id");

            migrationBuilder.CreateIndex(
                name: "ix_role_grants_person_id",
                table: "role_grants",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_route_approvals_route_id",
                table: "route_approvals",
                column: "route_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_route_revisions_model_kind_revision",
                table: "route_revisions",
                columns: new[] { "model", "kind", "revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_shipments_customer_reference",
                table: "shipments",
                column: "customer_reference");

            migrationBuilder.CreateIndex(
                name: "ix_shipments_part_id",
                table: "shipments",
                column: "part_id");

            migrationBuilder.CreateIndex(
                name: "ix_sign_in_sessions_person_id",
                table: "sign_in_sessions",
                column: "person_id");

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

            migrationBuilder.CreateIndex(
                name: "ix_stations_code",
                table: "stations",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_unit_returns_part_id",
                table: "unit_returns",
                column: "part_id");

            SearchIndexes.Put(migrationBuilder);
            Guards.Put(migrationBuilder);
        }
    }
}
