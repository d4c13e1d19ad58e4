using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.BenchStages;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>Filling the slots of a stage, line by line.</summary>
public class StackWalkTests
{
    [Fact]
    public void Stacking_a_capsule_fills_the_first_slot_that_takes_what_is_scanned()
    {
        var bench = new WalkThrough(Stack)
            .KnowingParts("diaphragm", "D26-00001", "D26-00002")
            .KnowingParts("board", "B26-00001")
            .KnowingLots("spacer", "SP-7")
            .KnowingLots("fabric", "FA-1")
            .KnowingLots("adhesive", "GL-9")
            .SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "C26-00001"), Severity.Ok, "Scan START."),
            (B(CodeKind.Lot, "SP-7"), Severity.Refused, "scan START first"),
            ("START", Severity.Ask, "Front diaphragm: scan a diaphragm."),
            (B(CodeKind.Lot, "SP-7"), Severity.Ok, "Front diaphragm: scan a diaphragm."),
            (B(CodeKind.Lot, "GL-9"), Severity.Refused, "No empty slot here takes an adhesive lot."),
            (B(CodeKind.Part, "B26-00001"), Severity.Refused, "No empty slot here takes a board."),
            ("D26-00001", Severity.Ok, "Rear diaphragm: scan a diaphragm."),
            (B(CodeKind.Lot, "SP-7"), Severity.Refused, "No empty slot here takes a spacer lot."),
            ("DONE", Severity.Refused, "Not yet."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "Nothing is missing. Scan DONE."),
            (B(CodeKind.Lot, "FA-1"), Severity.Ok, "Nothing is missing. Scan DONE."),
            ("DONE", Severity.Ok, "Passed.")
        );

        Assert.Equal(
            [
                ("spacer", null, "SP-7"),
                ("front-diaphragm", "D26-00001", null),
                ("rear-diaphragm", "D26-00002", null),
                ("fabric", null, "FA-1"),
            ],
            bench.Orders.OfType<StationCommand.Fit>().Select(fit => (fit.Position, fit.Child, fit.Lot))
        );
    }

    [Fact]
    public void A_position_code_its_name_and_next_and_back_choose_another_slot()
    {
        var bench = new WalkThrough(Stack)
            .KnowingParts("diaphragm", "D26-00001", "D26-00002", "D26-00003")
            .KnowingLots("spacer", "SP-7")
            .SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "C26-00001"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Front diaphragm"),
            (B(CodeKind.Position, "rear-diaphragm"), Severity.Ask, "Rear diaphragm: scan a diaphragm."),
            (B(CodeKind.Lot, "SP-7"), Severity.Refused, "Rear diaphragm takes a diaphragm, not a spacer lot."),
            ("D26-00001", Severity.Ok, "Front diaphragm"),
            (B(CodeKind.Position, "rear-diaphragm"), Severity.Refused, "not a slot of this stage"),
            ("next", Severity.Ask, "Spacer ring: scan a spacer lot."),
            ("next", Severity.Ask, "Resistive fabric"),
            ("next", Severity.Ask, "Front diaphragm"),
            ("back", Severity.Ask, "Resistive fabric"),
            ("no", Severity.Ask, "Front diaphragm"),
            ("spacer", Severity.Ask, "Spacer ring"),
            ("fit", Severity.Ask, "Front diaphragm")
        );

        Assert.Equal([("rear-diaphragm", "D26-00001")], bench.Orders.OfType<StationCommand.Fit>().Select(fit => (fit.Position, fit.Child)));
    }

    [Fact]
    public void A_child_scanned_twice_does_not_push_the_attempt_aside()
    {
        var bench = new WalkThrough(Stack).KnowingParts("diaphragm", "D26-00001", "D26-00002", "D26-00003").SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "C26-00001"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Front diaphragm"),
            ("D26-00001", Severity.Ok, "Rear diaphragm"),
            ("D26-00002", Severity.Ok, "Spacer"),
            ("D26-00002", Severity.Refused, "No empty slot here takes a diaphragm.")
        );
        Assert.Equal("C26-00001", bench.Session.Part);
    }
}
