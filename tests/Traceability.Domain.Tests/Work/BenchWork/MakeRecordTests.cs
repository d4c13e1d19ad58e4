using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work.BenchWork;

/// <summary>A stage in one go must come to the same as the same stage step by step.</summary>
public class MakeRecordTests
{
    private static readonly APart Fresh = new(
        ARoute.Of(
            ARoute.Stage("stack").Taking("screws", "screws").Measuring("torqueNcm", 1, 2),
            ARoute.Stage("cure") with
            {
                MinimumOpenMinutes = 1,
            }
        )
    );

    private static Decision<Closing> Record(APart part, string stage, Input[] inputs, params (string Name, string Digits)[] values) =>
        Attempts.Record(
            part.Dossier,
            stage,
            "ST-1",
            [.. values.Select(v => new EnteredValue(v.Name, Numbers.Typed(v.Digits)))],
            [],
            null,
            null,
            part.Context with
            {
                Inputs = inputs.ToDictionary(i => i.Position),
            },
            part.Bench.Stamp(part.Worker)
        );

    [Fact]
    public void A_record_leads_to_the_same_kinds_of_fact_as_the_steps_one_by_one()
    {
        var atOnce = Record(Fresh, "stack", [Something.Lot("screws", "screws")], ("torqueNcm", "1.5"));
        var stepwise = new APart(Fresh.Dossier.Route).Passed("stack");

        Assert.Equal(Verdict.Pass, atOnce.Accepted().Verdict);
        Assert.Equal(
            stepwise.Dossier.Facts.Skip(1).Select(f => f.GetType().Name).Order(),
            atOnce.Facts.Select(f => f.GetType().Name).Order()
        );
    }

    [Fact]
    public void A_failed_record_raises_its_nonconformity() =>
        Assert.Single(Record(Fresh, "stack", [Something.Lot("screws", "screws")], ("torqueNcm", "2.1")).Facts.OfType<Nonconformity>());

    [Fact]
    public void A_record_with_anything_missing_or_wrong_leads_to_nothing_at_all()
    {
        var screws = Something.Lot("screws", "screws");
        Record(Fresh, "cure", []).IsRefused(RefusalKind.Conflict, "not passed yet: Stack");
        Record(Fresh, "polish", []).IsRefused(RefusalKind.Invalid, "stack, cure");
        Record(Fresh, "stack", [], ("torqueNcm", "1.5")).IsRefused(RefusalKind.Conflict, "still empty: screws");
        Record(Fresh, "stack", [screws]).IsRefused(RefusalKind.Conflict, "still needs: torqueNcm");
        Record(Fresh, "stack", [screws], ("torque", "1.5")).IsRefused(RefusalKind.Invalid, "torqueNcm");
        Record(Fresh, "stack", [screws with { State = LotState.Quarantined }], ("torqueNcm", "1.5"))
            .IsRefused(RefusalKind.Conflict, "in quarantine");
    }

    [Fact]
    public void A_cure_cannot_be_recorded_in_one_go()
    {
        var part = new APart(Fresh.Dossier.Route).Passed("stack");

        Record(part, "cure", []).IsRefused(RefusalKind.Conflict, "lasts at least 1 min");
    }
}
