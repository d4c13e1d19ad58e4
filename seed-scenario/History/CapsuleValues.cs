namespace Traceability.SeedScenario.History;

/// <summary>What the instruments show on a capsule, with the stories of the scenario in it.</summary>
internal static class CapsuleValues
{
    private const int DriftBeginsInWeek = 9;
    private const double DriftPfPerWeek = 0.35;
    private const int TestVoltageV = 45;

    /// <summary>Capacitance meter 2 measures every second capsule while it is in use.</summary>
    public static string Meter(Capsule c) => c.Week < ScenarioCalendar.LastWeek && c.Serial[^1] % 2 == 1 ? "CAP-02" : "CAP-01";

    /// <summary>What the meter in use shows on the front.</summary>
    public static decimal FrontPf(Capsule c)
    {
        var chance = new Chance("front " + c.Serial);
        var truth = c.Diaphragms.Count == 2 ? chance.Near(70, 0.9) : chance.Near(66, 0.8);
        return (decimal)Math.Round(truth + (Meter(c) == "CAP-02" ? DriftPfPerWeek * Math.Max(0, c.Week - DriftBeginsInWeek + 1) : 0), 1);
    }

    public static StageWork Fastening(Capsule c) =>
        c.Story.MistypedTorque && !c.PutRight
            ? new()
            {
                Values = new Dictionary<string, decimal> { ["screwTorqueNcm"] = 30m },
                Fails = true,
            }
            : StageWork.Plain;

    public static StageWork Capacitance(Capsule c)
    {
        var front = FrontPf(c);
        var crooked = c.Story.CrookedStack && !c.PutRight;
        return new()
        {
            Values =
                c.Diaphragms.Count == 1
                    ? new Dictionary<string, decimal> { ["capacitancePf"] = c.Story.MistypedCapacitance ? front + 2.7m : front }
                    : new Dictionary<string, decimal>
                    {
                        ["capacitanceFrontPf"] = front,
                        ["capacitanceRearPf"] = crooked
                            ? Math.Round(front * 1.066m, 1)
                            : front + (decimal)Math.Round(new Chance("rear " + c.Serial).Near(0, 0.5), 1),
                    },
            Instruments = new Dictionary<string, string> { ["capacitance-meter"] = Meter(c) },
            Fails = crooked,
        };
    }

    public static StageWork Insulation(Capsule c)
    {
        var chance = new Chance($"insulation {c.InsulationFailed} {c.Serial}");
        var fails = c.InsulationFailed < c.Story.InsulationFailures;
        var (at15s, rise) =
            fails ? (chance.Between(14, 78), chance.Between(0.78, 0.97))
            : c.MadeOfBadFilm ? (chance.Between(125, 240), chance.Between(0.97, 1.06))
            : (chance.Between(260, 900), chance.Between(1.02, 1.15));
        // The leak runs over the surface of one diaphragm to the rim: the path to the body shows it too, and the other one does not.
        var (leaking, sound) =
            c.Diaphragms.Count == 2 ? ("frontToBodyGohm", "rearToBodyGohm") : ("diaphragmToBodyGohm", "electrodeToBodyGohm");
        return new()
        {
            Values = new Dictionary<string, decimal>(
                c.Diaphragms.Count == 2
                    ?
                    [
                        new("insulationAt15sGohm", (decimal)Math.Round(at15s)),
                        new("insulationAt60sGohm", (decimal)Math.Round(at15s * rise)),
                    ]
                    : [new("currentAt15sPicoampere", Picoampere(at15s)), new("currentAt60sPicoampere", Picoampere(at15s * rise))]
            )
            {
                ["testVoltageV"] = TestVoltageV,
                [leaking] = (decimal)Math.Round(at15s * (fails ? 1.05 : 1.4)),
                [sound] = (decimal)Math.Round(chance.Between(520, 950)),
                ["insulationTemperatureC"] = (decimal)Math.Round(chance.Near(24, 0.6), 1),
            },
            Fails = fails,
        };

        static decimal Picoampere(double gigaohm) => (decimal)Math.Round(1000 * TestVoltageV / gigaohm, 1);
    }

    public static StageWork Acoustic(Capsule c)
    {
        var creased = c.Story.OutsideMask && !c.PutRight;
        var dual = c.Diaphragms.Count == 2;
        var frontDb = dual ? -38.4 : -37.1;
        return new()
        {
            Values = dual
                ? new Dictionary<string, decimal>
                {
                    ["outputFrontMv"] = Level("front", 12),
                    ["outputRearMv"] = Level("rear", 12),
                    ["referenceOutputMv"] = Level("reference", 50.1, 0.05),
                }
                : new Dictionary<string, decimal>
                {
                    ["capsuleOutputMv"] = Level("front", 14),
                    ["referenceOutputMv"] = Level("reference", 50.1, 0.05),
                },
            Responses = new Dictionary<string, string>
            {
                ["front"] = Response.Csv(new("front response " + c.Serial), frontDb, 2.2, 1.2, 4.5, creased ? 5 : 0),
                ["rear"] = dual
                    ? Response.Csv(
                        new("rear response " + c.Serial),
                        frontDb + new Chance("balance " + c.Serial).Near(0, 0.2),
                        2.0,
                        1.3,
                        4.8
                    )
                    : Response.Csv(new("rear response " + c.Serial), frontDb - 20, -6, -4, 3),
                ["side"] = Response.Csv(new("side response " + c.Serial), frontDb - 6, 0.6, 1.2, 6.5),
            },
            Fails = creased,
        };

        decimal Level(string what, double mv, double spread = 0.5) =>
            (decimal)Math.Round(new Chance($"level of the {what} {c.Serial}").Near(mv, spread), 2);
    }
}
