namespace Traceability.SeedScenario.History;

/// <summary>A part on its way through the workshop, with what is going to happen to it.</summary>
internal abstract class Piece(string serial, string kind, string model, int week)
{
    private static readonly string[] Builders = ["HIST1", "HIST2", "HIST3", "HIST4"];

    public string Serial => serial;

    public string Kind => kind;

    public string Model => model;

    /// <summary>The week in which it is made; says which lots it gets.</summary>
    public int Week => week;

    /// <summary>One chance of its own, so that its values do not depend on what else is entered.</summary>
    public Chance Chance { get; } = new(serial);

    /// <summary>Whoever takes it through its stages.</summary>
    public string Builder { get; } = new Chance("builder of " + serial).Of(Builders);

    /// <summary>The last stage that is done; null when all are.</summary>
    public string? Last { get; init; }

    /// <summary>The load that it is still in when the scenario ends.</summary>
    public string? LeftIn { get; init; }

    public bool Scrapped { get; set; }

    /// <summary>It lies where it is, because somebody at work in the meantime took what was to go into it.</summary>
    public bool Stopped { get; set; }

    /// <summary>True when it went all the way.</summary>
    public bool Complete => Last is null && !Scrapped && !Stopped;
}

/// <summary>A diaphragm; its two resonances are settled beforehand.</summary>
internal sealed class Diaphragm(string serial, string model, int week, DiaphragmFate fate = DiaphragmFate.Good, double spreadHz = 2)
    : Piece(serial, "diaphragm", model, week)
{
    private static readonly Dictionary<string, (double JigHz, double RingOverJig)> Design = new()
    {
        ["TARN-2"] = (1200, 1.05471),
        ["TARN-1"] = (1100, 1.05269),
    };

    private readonly double jigHz = new Chance("jig " + serial).Near(Design[model].JigHz, spreadHz);

    public DiaphragmFate Fate => fate;

    public decimal JigHz => (decimal)Math.Round(jigHz, 1);

    public decimal RingHz =>
        fate == DiaphragmFate.Conceded ? 1234.2m : (decimal)Math.Round(jigHz * Design[Model].RingOverJig * (1 + Drift()), 1);

    private double Drift()
    {
        var chance = new Chance("drift " + Serial);
        return fate switch
        {
            DiaphragmFate.Slipped => chance.Between(-0.062, -0.041),
            DiaphragmFate.Crept => chance.Between(-0.020, -0.013),
            _ => chance.Near(-0.001, spreadHz * 0.0007),
        };
    }
}

/// <summary>What becomes of a diaphragm's bond.</summary>
internal enum DiaphragmFate
{
    Good,

    /// <summary>Lower than it should be, but inside the limits.</summary>
    Crept,

    /// <summary>A little below the limit; used under a concession.</summary>
    Conceded,

    /// <summary>Far below the limit; scrapped.</summary>
    Slipped,
}

/// <summary>A capsule of one or two diaphragms.</summary>
internal sealed class Capsule(string serial, string model, int week, IReadOnlyList<Diaphragm> diaphragms)
    : Piece(serial, "capsule", model, week)
{
    public IReadOnlyList<Diaphragm> Diaphragms => diaphragms;

    public CapsuleStory Story { get; init; } = CapsuleStory.Plain;

    public bool MadeOfBadFilm => diaphragms[0].Week is >= 6 and <= 8;

    /// <summary>The day of its week (0 = Monday) on which it goes into the cabinet next.</summary>
    public int SoakDay { get; set; } = 2;

    /// <summary>How often the insulation test was failed so far.</summary>
    public int InsulationFailed { get; set; }

    /// <summary>The first acoustic test or stack that failed has been put right.</summary>
    public bool PutRight { get; set; }

    /// <summary>The day of its week on which it can go into a unit.</summary>
    public int ReadyDay { get; set; }
}

/// <summary>What happens to a capsule on its way.</summary>
internal sealed record CapsuleStory(
    int InsulationFailures = 0,
    bool CrookedStack = false,
    bool OutsideMask = false,
    bool MistypedTorque = false,
    bool MistypedCapacitance = false,
    bool WaitsForDecision = false
)
{
    public static readonly CapsuleStory Plain = new();
}

/// <summary>A set of boards.</summary>
internal sealed class BoardSet(string serial, string model, int week, bool faulty = false) : Piece(serial, "board-set", model, week)
{
    public bool Faulty => faulty;
}

/// <summary>A microphone.</summary>
internal sealed class Unit(string serial, string model, int week, BoardSet boards, Capsule? capsule) : Piece(serial, "unit", model, week)
{
    public BoardSet Boards => boards;

    public Capsule? Capsule => capsule;

    public bool MarkOnBody { get; init; }

    public UnitEnd End { get; init; } = UnitEnd.Shipped;
}

/// <summary>How far a finished unit goes.</summary>
internal enum UnitEnd
{
    Finished,
    Certified,
    Shipped,
}
