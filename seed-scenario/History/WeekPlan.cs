namespace Traceability.SeedScenario.History;

/// <summary>What is made in one week, and what becomes of it. Numbers are fixed, so that the stories can be told by serial.</summary>
internal sealed record WeekPlan(
    int Week,
    IReadOnlyList<Diaphragm> Diaphragms,
    IReadOnlyList<Capsule> Capsules,
    IReadOnlyList<Unit> Units,
    IReadOnlyList<BoardSet> Boards
)
{
    private const string Dual = "TARN-2";
    private const string Single = "TARN-1";

    public int Pieces => Diaphragms.Count + Capsules.Count + Units.Count + Boards.Count;

    /// <summary>A week in which two units of each model are built.</summary>
    public static WeekPlan Building(int week)
    {
        int[] numbers = [2 * week + 1, 2 * week + 2];
        var duals = Enumerable
            .Range(4 * week + 1, 4)
            .Select(n => new Diaphragm($"DD-{n:0000}", Dual, week, Stories.FateOf(week, n)))
            .ToList();
        var singles = numbers.Select(n => new Diaphragm($"DS-{n:0000}", Single, week, Stories.FateOf(week, 0))).ToList();
        var pairs = Paired(duals);
        List<Capsule> capsules =
        [
            .. numbers.Zip(pairs, (n, pair) => new Capsule($"CD-{n:0000}", Dual, week, pair) { Story = Stories.OfCapsule($"CD-{n:0000}") }),
            .. numbers.Zip(singles, (n, d) => new Capsule($"CS-{n:0000}", Single, week, [d]) { Story = Stories.OfCapsule($"CS-{n:0000}") }),
        ];
        var units = capsules.ConvertAll(c => UnitOf(c, week));
        return new(
            week,
            [.. duals, .. singles, .. Stories.SlippedIn(week)],
            capsules,
            units,
            [.. units.Select(u => u.Boards), .. Stories.FaultyBoardsIn(week)]
        );
    }

    /// <summary>Finished parts that stay free: four and three diaphragms, a capsule and two board sets of each model.</summary>
    public static WeekPlan Spares()
    {
        const int week = 15;
        var diaphragms = Stock(week, 65, 6, 33, 4).Diaphragms;
        var (duals, singles) = (diaphragms.Where(d => d.Model == Dual).ToList(), diaphragms.Where(d => d.Model == Single).ToList());
        return new(
            week,
            diaphragms,
            [new Capsule("CD-0034", Dual, week, [duals[^2], duals[^1]]), new Capsule("CS-0035", Single, week, [singles[^1]])],
            [],
            [
                new BoardSet("BD-0036", Dual, week),
                new BoardSet("BD-0037", Dual, week),
                new BoardSet("BS-0036", Single, week),
                new BoardSet("BS-0037", Single, week),
            ]
        );
    }

    /// <summary>Diaphragms made for stock, close to nominal, so that any two of them match.</summary>
    public static WeekPlan Stock(int week, int firstDual, int duals, int firstSingle, int singles) =>
        new(
            week,
            [
                .. Enumerable.Range(firstDual, duals).Select(n => new Diaphragm($"DD-{n:0000}", Dual, week, spreadHz: 0.8)),
                .. Enumerable.Range(firstSingle, singles).Select(n => new Diaphragm($"DS-{n:0000}", Single, week, spreadHz: 0.8)),
            ],
            [],
            [],
            []
        );

    private static Unit UnitOf(Capsule capsule, int week)
    {
        var (letter, number) = (capsule.Serial[1], capsule.Serial[3..]);
        var serial = $"U{letter}-{number}";
        return new(serial, capsule.Model, week, new BoardSet($"B{letter}-{number}", capsule.Model, week), capsule)
        {
            MarkOnBody = serial == Stories.MarkedUnit,
            End = Stories.EndOf(serial, week),
        };
    }

    /// <summary>Neighbours by resonance match best.</summary>
    private static IEnumerable<IReadOnlyList<Diaphragm>> Paired(IReadOnlyList<Diaphragm> diaphragms) =>
        diaphragms.OrderBy(d => d.RingHz).Chunk(2);
}
