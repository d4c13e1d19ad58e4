using CsCheck;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Domain.Tests.Work.QualityDecisions;

public class HoldsOfTraceTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 27, 12, 0, 0, TimeSpan.Zero);

    private static readonly Guid Edda = Guid.NewGuid(),
        Tove = Guid.NewGuid();

    private static readonly string Leaks = "leaks" + HoldsOfTrace.MarkOf(TraceKind.Lot, "F-1");

    [Fact]
    public void The_mark_names_the_trace() => Assert.Equal("leaks (trace of lot F-1)", Leaks);

    [Fact]
    public void Holds_of_one_moment_person_and_reason_are_one_decision()
    {
        Hold[] holds =
        [
            On(Noon, Edda, Leaks),
            On(Noon, Edda, Leaks),
            On(Noon.AddDays(1), Edda, Leaks),
            On(Noon, Tove, Leaks),
            On(Noon, Edda, "dull" + HoldsOfTrace.MarkOf(TraceKind.Lot, "F-1")),
        ];
        Assert.Equal([1, 1, 1, 2], TracedDecision.Of(holds, new HashSet<Guid>()).Select(d => d.Holds.Count).Order());
        Assert.Equal(Noon.AddDays(1), TracedDecision.Of(holds, new HashSet<Guid>())[^1].Holds[0].RecordedAt);
    }

    [Fact]
    public void Every_hold_still_in_force_is_released_for_one_reason_and_those_lifted_before_are_left_alone()
    {
        Hold[] holds = [.. Enumerable.Range(0, 5).Select(_ => On(Noon, Edda, Leaks))];
        var decision = Assert.Single(TracedDecision.Of(holds, new HashSet<Guid> { holds[1].Id, holds[4].Id, Guid.NewGuid() }));
        var lifting = HoldsOfTrace.Lift(decision, "  dried, measured again ", StampAt(Noon.AddDays(3)));
        var releases = lifting.Facts.Cast<HoldRelease>().ToArray();
        Assert.Equal(new[] { holds[0].Id, holds[2].Id, holds[3].Id }.Order(), releases.Select(r => r.HoldId).Order());
        Assert.Equal(lifting.Value!.Select(h => h.Id), releases.Select(r => r.HoldId));
        Assert.All(releases, r => Assert.Equal(("dried, measured again", Tove, Noon.AddDays(3)), (r.Reason, r.By, r.OccurredAt)));
        Assert.Equal(2, decision.Lifted.Count);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  ")]
    public void Without_a_reason_nothing_is_lifted(string? reason)
    {
        var lifting = HoldsOfTrace.Lift(TracedDecision.Of([On(Noon, Edda, Leaks)], new HashSet<Guid>())[0], reason, StampAt(Noon));
        Assert.Equal(RefusalKind.Invalid, lifting.Refusal!.Kind);
        Assert.Empty(lifting.Facts);
    }

    [Fact]
    public void What_is_lifted_already_cannot_be_lifted_again()
    {
        var hold = On(Noon, Edda, Leaks);
        var lifting = HoldsOfTrace.Lift(TracedDecision.Of([hold], new HashSet<Guid> { hold.Id })[0], "again", StampAt(Noon));
        Assert.Equal(RefusalKind.Conflict, lifting.Refusal!.Kind);
    }

    [Fact]
    public void Whatever_was_lifted_before_no_hold_gets_a_second_release_and_none_is_forgotten() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[0, int.MaxValue])
            .Sample(
                (count, seed) =>
                {
                    Hold[] holds = [.. Enumerable.Range(0, count).Select(_ => On(Noon, Edda, Leaks))];
                    var lifted = holds.Where((_, i) => (seed >> (i % 31) & 1) == 1).Select(h => h.Id).ToHashSet();
                    var lifting = HoldsOfTrace.Lift(Assert.Single(TracedDecision.Of(holds, lifted)), "seen", StampAt(Noon));
                    Assert.Equal(
                        holds.Select(h => h.Id).Order(),
                        lifting.Facts.Cast<HoldRelease>().Select(r => r.HoldId).Concat(lifted).Order()
                    );
                }
            );

    private static Hold On(DateTimeOffset at, Guid by, string reason) =>
        new(Guid.NewGuid(), null, Guid.NewGuid(), null, reason, by, at, at);

    private static Stamp StampAt(DateTimeOffset at) => new(Tove, at, at, Guid.NewGuid);
}
