using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Delivery;

namespace Traceability.Domain.Tests.Work.Delivery;

public class ReleaseUnitTests
{
    private static APart Unit =>
        new(
            ARoute.Of(
                ARoute.Stage("body").Taking("capsule", partKind: PartKinds.Capsule),
                ARoute.Stage("inspect").Measuring("noiseDba", 0, 20)
            ) with
            {
                Kind = PartKinds.Unit,
            }
        );

    private static APart Finished => Unit.Passed("body", "inspect");

    private static string[] Missing(APart part) => [.. ReleaseUnit.MissingForCertificate(part.Dossier).Select(c => c.Rule)];

    [Fact]
    public void A_finished_unit_lacks_nothing_for_its_certificate() => Assert.Empty(ReleaseUnit.MissingForCertificate(Finished.Dossier));

    [Fact]
    public void Each_stage_still_to_be_passed_is_named()
    {
        var missing = ReleaseUnit.MissingForCertificate(Unit.Dossier).Single();

        Assert.Equal(("not passed: Body, Inspect", "next is Body"), (missing.Because, missing.Remedy));
    }

    [Fact]
    public void Whatever_stands_against_a_certificate_is_named_with_what_would_help()
    {
        var held = Finished;
        held.Hold();
        var raised = Finished;
        raised.TryRaise().Accepted();
        var scrapped = Unit.Passed("body").Failed("inspect").Decided(DispositionKind.Scrap);
        var opened = Finished;
        opened.TryRemove("capsule").Accepted();

        Assert.Equal(["hold"], Missing(held));
        Assert.Equal(["nonconformities"], Missing(raised));
        Assert.Equal(["stages", "scrapped"], Missing(scrapped));
        Assert.Equal(["stages"], Missing(opened));
        Assert.Equal(["holds"], Missing(Finished.Holding(InsideProblemKind.Hold)));
        Assert.Equal(["lots-inside"], Missing(Finished.Holding(InsideProblemKind.Quarantine)));
        Assert.Equal(["nonconformities"], Missing(Finished.Holding(InsideProblemKind.Nonconformity)));
        Assert.Equal(["instrument-in-doubt"], Missing(Finished.InDoubt()));
        Assert.Equal(["kind"], Missing(new APart(ARoute.Plain).Passed("mount", "tune", "trim")));
        Assert.All(ReleaseUnit.MissingForCertificate(held.Dossier), c => Assert.False(string.IsNullOrWhiteSpace(c.Remedy)));
    }

    [Fact]
    public void A_unit_leaves_only_with_a_certificate_of_its_present_state()
    {
        Finished.TryShip().IsRefused(RefusalKind.Conflict, "no birth certificate");
        Finished.Certified().TryShip().Accepted();

        var corrected = Finished.Certified();
        corrected.TryCorrect("noiseDba", "11").Accepted();
        corrected.TryShip().IsRefused(RefusalKind.Conflict, "for its present state");
        corrected.Certified().TryShip().Accepted();
    }

    [Fact]
    public void A_unit_with_work_left_does_not_leave()
    {
        var opened = Finished.Certified();
        opened.TryRemove("capsule").Accepted();

        opened.TryShip().IsRefused(RefusalKind.Conflict, "may not be shipped", "not passed: Body, Inspect");
    }

    [Fact]
    public void A_unit_leaves_once_and_again_only_after_it_came_back()
    {
        var part = Finished.Certified();
        part.TryShip().Accepted();

        Assert.Equal(PartState.Shipped, part.Dossier.State());
        part.TryShip().IsRefused(RefusalKind.Conflict, "left the workshop");
        part.CameBack().TryShip().IsRefused(RefusalKind.Conflict, "nobody has said how the return came out", "its return is still open");
        part.CameOut(ReturnOutcomeKind.NoFault).TryShip().IsRefused(RefusalKind.Conflict, "since it came back");
        part.Certified().TryShip().Accepted();
    }

    [Fact]
    public void A_repaired_unit_is_certified_only_once_something_was_tested_since_it_came_back()
    {
        var part = Finished.Certified().Shipped().CameBack().CameOut(ReturnOutcomeKind.Repaired);
        Assert.Equal(["return-test"], Missing(part));

        part.TryRaise().Accepted();
        part.Decided(DispositionKind.Rework, "inspect");
        Assert.Equal(["stages", "return-test"], Missing(part));
        Assert.Empty(Missing(part.Passed("inspect")));
    }
}
