namespace Traceability.SeedScenario.History;

/// <summary>What is in flight when the scenario ends, and what lies ready for whoever starts.</summary>
internal sealed class LastWeek(IReadOnlyList<Diaphragm> stock)
{
    private const int Now = ScenarioCalendar.LastWeek;
    private const string Dual = "TARN-2";
    private const string Single = "TARN-1";

    private readonly Queue<Diaphragm> duals = new(stock.Where(d => d.Model == Dual));
    private readonly Queue<Diaphragm> singles = new(stock.Where(d => d.Model == Single));

    /// <summary>Capsules made of stock the week before: one for a repair, three for units in flight.</summary>
    public IReadOnlyList<Capsule> Before()
    {
        const int week = Now - 1;
        return [DualCapsule("CD-0101", week), DualCapsule("CD-0033", week), SingleCapsule("CS-0033", week), SingleCapsule("CS-0034", week)];
    }

    /// <summary>Seven diaphragms at as many places, five of them still in their jigs.</summary>
    public static IReadOnlyList<Diaphragm> Diaphragms() =>
        [
            new("DD-0201", Dual, Now) { Last = "mount" },
            new("DD-0202", Dual, Now) { Last = "coarse-tune" },
            new("DD-0203", Dual, Now) { Last = "cure", LeftIn = "cure" },
            new("DD-0204", Dual, Now) { Last = "cure", LeftIn = "cure" },
            new("DS-0201", Single, Now) { Last = "fine-tune" },
            new("DS-0202", Single, Now) { Last = "ring-bond" },
            new("DS-0203", Single, Now) { Last = "release-trim" },
        ];

    /// <summary>Five capsules on their way.</summary>
    public IReadOnlyList<Capsule> Capsules() =>
        [
            DualCapsule("CD-0035", Now, "capacitance"),
            DualCapsule("CD-0036", Now, "insulation", new(InsulationFailures: 1, WaitsForDecision: true)),
            DualCapsule("CD-0037", Now, "soak-humid", leftIn: "soak-humid"),
            SingleCapsule("CS-0036", Now, "leads"),
            SingleCapsule("CS-0037", Now, "warm-drying", "warm-drying"),
        ];

    /// <summary>Boards: for the units in flight, one not checked yet, one that failed and waits for a decision.</summary>
    public static IReadOnlyList<BoardSet> Boards() =>
        [
            .. Enumerable
                .Range(33, 3)
                .SelectMany(n => new[] { new BoardSet($"BD-{n:0000}", Dual, Now), new BoardSet($"BS-{n:0000}", Single, Now) }),
            new("BD-0038", Dual, Now) { Last = "receipt" },
            new("BS-0038", Single, Now, faulty: true) { Last = "incoming-check" },
        ];

    /// <summary>Six units at as many places.</summary>
    public static IReadOnlyList<Unit> Units(IReadOnlyList<Capsule> before, IReadOnlyList<BoardSet> boards)
    {
        return
        [
            InFlight("UD-0033", Dual, "grille-plate", "CD-0033"),
            InFlight("UD-0034", Dual, "boards-spacers"),
            InFlight("UD-0035", Dual, "body"),
            InFlight("US-0033", Single, "functional-check", "CS-0033"),
            InFlight("US-0034", Single, "final-acoustic", "CS-0034"),
            InFlight("US-0035", Single, "connectors-wiring"),
        ];

        Unit InFlight(string serial, string model, string last, string? capsule = null) =>
            new(serial, model, Now, boards.Single(b => b.Serial == "B" + serial[1..]), before.SingleOrDefault(c => c.Serial == capsule))
            {
                Last = last,
            };
    }

    private Capsule DualCapsule(string serial, int week, string? last = null, CapsuleStory? story = null, string? leftIn = null) =>
        new(serial, Dual, week, [duals.Dequeue(), duals.Dequeue()])
        {
            Last = last,
            LeftIn = leftIn,
            Story = story ?? CapsuleStory.Plain,
        };

    private Capsule SingleCapsule(string serial, int week, string? last = null, string? leftIn = null) =>
        new(serial, Single, week, [singles.Dequeue()]) { Last = last, LeftIn = leftIn };
}
