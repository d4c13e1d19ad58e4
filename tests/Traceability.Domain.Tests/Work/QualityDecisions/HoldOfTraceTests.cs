using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Domain.Tests.Work.QualityDecisions;

public class HoldOfTraceTests
{
    private static Hold? Put(APart part, string reason = "leaks (trace of lot F-1)") =>
        HoldsOfTrace.Put(part.Dossier, reason, part.Bench.Stamp(Somebody.QualityLead));

    [Fact]
    public void A_part_that_a_trace_found_is_held_for_its_reason()
    {
        var part = new APart(ARoute.Plain);

        var hold = Put(part);

        Assert.Equal(("leaks (trace of lot F-1)", (Guid?)part.Dossier.Part.Id), (hold?.Reason, hold?.PartId));
    }

    [Fact]
    public void A_part_held_for_the_same_reason_is_not_held_twice_but_for_another_it_is()
    {
        var part = new APart(ARoute.Plain);
        part.Hold("it looks odd");
        part.Hold("leaks (trace of lot F-1)");

        Assert.Null(Put(part));
        Assert.NotNull(Put(part, "leaks (trace of lot F-2)"));
    }

    [Fact]
    public void A_scrapped_part_is_not_held()
    {
        var part = new APart(ARoute.Plain);
        part.TryRaise().Accepted();

        Assert.Null(Put(part.Decided(DispositionKind.Scrap)));
    }

    [Fact]
    public void Decisions_and_their_holds_stand_in_the_order_of_their_ids_where_they_were_recorded_together()
    {
        var at = new DateTimeOffset(2026, 11, 27, 12, 0, 0, TimeSpan.Zero);
        Hold Of(int id, string reason) => new(new(id, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0), null, null, null, reason, Guid.Empty, at, at);

        var decisions = TracedDecision.Of([Of(4, "dull"), Of(3, "leaks"), Of(2, "dull"), Of(1, "leaks")], new HashSet<Guid>());

        Assert.Equal(["leaks", "dull"], decisions.Select(d => d.Reason));
        Assert.Equal([Of(1, "leaks").Id, Of(2, "dull").Id], decisions.Select(d => d.Id));
    }
}
