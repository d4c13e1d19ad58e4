using CsCheck;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>A bench with a part, a row for the oven, and every kind of line that may be typed there.</summary>
internal static class ScannedLines
{
    public const string UnlikelyPin = "739182645";

    public static readonly StageNeeds Busy = new("C26-00001", "stack", "Clean and stack", GateSign.Open, "Open.")
    {
        Slots = [new("front", "Front", null, "diaphragm"), new("spacer", "Spacer", "spacer", null)],
        Characteristics = [new("capacitanceFrontPf", "Capacitance front", "pF", 60m, 80m)],
        Evidence = ["photo of the stack"],
        InstrumentKinds = ["lcr-meter"],
    };

    public static readonly string[] Lines =
    [
        "",
        "12.5",
        "1,234",
        "nan",
        "some words here",
        "D26-00001",
        "SP-1",
        "LCR-1",
        "front",
        "X/Y",
        "ä",
        "PT-D26-00001-?",
        "PT-D26-00001-0",
        UnlikelyPin,
        UnlikelyPin + " ",
        "1111",
        "7391 82645",
        .. StationActions.All.Select(action => action.Word()),
        Code(CodeKind.Badge, "BUILD1"),
        Code(CodeKind.Badge, "BUILD2"),
        Code(CodeKind.Station, "BENCH-1"),
        Code(CodeKind.Carrier, "JIG-1"),
        Code(CodeKind.Part, "C26-00001"),
        Code(CodeKind.Part, "L26-00001"),
        Code(CodeKind.Part, "L26-00002"),
        Code(CodeKind.Part, "L26-00003"),
        Code(CodeKind.Part, "D26-00001"),
        Code(CodeKind.Lot, "SP-1"),
        Code(CodeKind.Instrument, "LCR-1"),
        Code(CodeKind.Position, "front"),
    ];

    public static string Code(CodeKind kind, string id) => PrintedCode.For(kind, id).Text;

    public static StageNeeds Load(string serial) => new(serial, "cure", "Cure", GateSign.Open, "Open.") { MayRunAsLoad = true };

    public static WalkThrough Workshop(bool moody = false)
    {
        var count = 0;
        return new WalkThrough(Busy, Load("L26-00001"), Load("L26-00002"), Load("L26-00003"))
        {
            RightPin = UnlikelyPin,
            Refusing = command =>
                moody && command is not StationCommand.AddToLoad && count++ % 3 == 2 ? new ScanOutcome.Refused("Not now.") : null,
        }
            .KnowingParts("diaphragm", "D26-00001")
            .KnowingLots("spacer", "SP-1")
            .Knowing(new Scan.Part("C26-00001", "capsule"), "JIG-1")
            .Knowing(new Scan.Instrument("LCR-1", "lcr-meter"), "LCR-1");
    }

    public static readonly Gen<string[]> Sequences = Gen.Int[0, Lines.Length - 1].Select(i => Lines[i]).Array[0, 60];
}
