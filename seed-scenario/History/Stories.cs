namespace Traceability.SeedScenario.History;

/// <summary>The stories that are told in README.md of this folder, by serial and lot.</summary>
internal static class Stories
{
    /// <summary>The film lot whose capsules leak; in use in weeks 6 to 8.</summary>
    public const string BadFilm = "F-2603";

    /// <summary>The adhesive lot that slips; in use in weeks 10 and 11.</summary>
    public const string BadAdhesive = "A-2613";

    /// <summary>The capacitance meter that drifted.</summary>
    public const string DriftedMeter = "CAP-02";

    /// <summary>Sent out with a mark on its body, under a concession.</summary>
    public const string MarkedUnit = "US-0011";

    /// <summary>Certified, but stopped on its way out.</summary>
    public const string HeldUnit = "US-0030";

    private static readonly Dictionary<string, CapsuleStory> Capsules = new()
    {
        ["CD-0013"] = new(InsulationFailures: 1),
        ["CD-0014"] = new(InsulationFailures: 2),
        ["CD-0016"] = new(InsulationFailures: 1),
        ["CD-0017"] = new(InsulationFailures: 3),
        ["CD-0018"] = new(InsulationFailures: 1),
        ["CS-0013"] = new(InsulationFailures: 1),
        ["CS-0015"] = new(InsulationFailures: 2),
        ["CS-0016"] = new(InsulationFailures: 1),
        ["CS-0017"] = new(InsulationFailures: 3),
        ["CS-0018"] = new(InsulationFailures: 1),
        ["CS-0005"] = new(InsulationFailures: 1),
        ["CD-0006"] = new(MistypedTorque: true),
        ["CS-0010"] = new(MistypedCapacitance: true),
        ["CS-0021"] = new(OutsideMask: true),
        ["CD-0027"] = new(CrookedStack: true),
    };

    public static CapsuleStory OfCapsule(string serial) => Capsules.GetValueOrDefault(serial, CapsuleStory.Plain);

    public static DiaphragmFate FateOf(int week, int dualNumber) =>
        week is not (10 or 11) ? DiaphragmFate.Good
        : dualNumber == 41 ? DiaphragmFate.Conceded
        : DiaphragmFate.Crept;

    /// <summary>Diaphragms bonded with the bad adhesive that slipped so far that they were scrapped.</summary>
    public static IEnumerable<Diaphragm> SlippedIn(int week) =>
        week switch
        {
            10 => [Slipped("DD-0101", "TARN-2", 10), Slipped("DD-0102", "TARN-2", 10), Slipped("DS-0101", "TARN-1", 10)],
            11 => [Slipped("DD-0103", "TARN-2", 11), Slipped("DD-0104", "TARN-2", 11), Slipped("DS-0102", "TARN-1", 11)],
            _ => [],
        };

    public static IEnumerable<BoardSet> FaultyBoardsIn(int week) => week == 4 ? [new BoardSet("BS-0101", "TARN-1", 4, faulty: true)] : [];

    public static UnitEnd EndOf(string serial, int week) =>
        serial switch
        {
            "UD-0018" or HeldUnit or "UD-0029" or "UD-0030" or "US-0029" => UnitEnd.Certified,
            "UD-0032" or "US-0032" => UnitEnd.Finished,
            _ when week == 15 => UnitEnd.Certified,
            _ => UnitEnd.Shipped,
        };

    private static Diaphragm Slipped(string serial, string model, int week) => new(serial, model, week, DiaphragmFate.Slipped);
}
