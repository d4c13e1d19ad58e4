using CsCheck;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work;

/// <summary>Whatever is done to a part in whatever order, on whatever route, some things hold after every step.</summary>
public class AnyWorkTests
{
    private static readonly string[] StateWords =
    [
        "ready",
        "in-work",
        "nonconforming",
        "on-hold",
        "finished",
        "fitted",
        "shipped",
        "scrapped",
    ];

    private static readonly Gen<AnyStage> Stage = Gen.Select(
        Gen.Int[0, 2],
        Gen.Bool,
        Gen.Bool,
        Gen.Int[0, 20],
        Gen.Int[0, 3],
        Gen.Int[0, 4],
        (measures, part, lot, wait, allowed, people) =>
            new AnyStage(measures, part, lot, Math.Max(0, wait - 10), allowed == 0 ? null : allowed, people == 0)
    );

    private static readonly Gen<AnyStep> Step = Gen.Select(
        Gen.Int[0, 11],
        Gen.Int[0, 11],
        Gen.Int[5, 25],
        Gen.Int[0, 3],
        (what, which, value, who) => new AnyStep(what, which, value, who)
    );

    private static readonly Gen<(AnyStage[] Stages, AnyStep[] Steps)> Story = Gen.Select(Stage.Array[1, 5], Step.Array[1, 30]);

    [Fact]
    public void Counting_passes_are_always_the_first_stages_of_the_route_once_nothing_waits_for_a_decision() =>
        AfterEveryStep(part =>
        {
            if (!part.Dossier.OpenNonconformities().Any() && !part.Dossier.Scrapped)
            {
                Assert.Equal(part.Dossier.Route.Stages.Select(s => s.Code).Take(part.Passes.Count()), part.Passes);
            }
        });

    [Fact]
    public void A_stage_counts_only_when_it_was_passed_or_conceded() =>
        AfterEveryStep(part =>
            Assert.All(
                part.Passes,
                stage =>
                {
                    var pass = part.Dossier.CountingPass(stage)!;
                    var conceded = part.Dossier.Of<Disposition>().Any(d => d.Kind is DispositionKind.Concession or DispositionKind.Regrade);
                    Assert.True(
                        pass.Closed
                            && (
                                conceded
                                || (
                                    pass.Readings.All(r => r.Met)
                                    && part.StageOf(stage).Characteristics.All(c => pass.Reading(c.Name) is not null)
                                )
                            )
                    );
                }
            )
        );

    [Fact]
    public void A_part_never_has_two_open_attempts() =>
        AfterEveryStep(part => Assert.True(part.Dossier.Attempts.Count(a => a.Ending is null) <= 1));

    [Fact]
    public void A_position_never_holds_two_things() =>
        AfterEveryStep(part =>
        {
            var removed = part.Dossier.Of<Removal>().Select(r => r.FittingId).ToHashSet();
            var present = part.Dossier.Of<Fitting>().Where(f => !removed.Contains(f.Id)).Select(f => f.Position).ToList();
            Assert.Equal(present.Distinct(), present);
        });

    [Fact]
    public void A_stage_that_counts_has_every_slot_filled_that_must_be() =>
        AfterEveryStep(part =>
            Assert.All(
                part.Passes,
                stage =>
                    Assert.All(
                        part.StageOf(stage).Slots.Where(s => s.Required),
                        s => Assert.True(part.Dossier.PresentFittings.ContainsKey(s.Position))
                    )
            )
        );

    [Fact]
    public void The_state_is_always_one_of_the_words() =>
        AfterEveryStep(part => Assert.Contains(Words.Of(part.Dossier.State()), StateWords));

    [Fact]
    public void What_is_in_a_dossier_stays_in_it()
    {
        IReadOnlyList<Fact> before = [];
        AfterEveryStep(
            part =>
            {
                Assert.Equal(before, part.Dossier.Facts.Take(before.Count));
                before = part.Dossier.Facts;
            },
            begin: () => before = [],
            threads: 1
        );
    }

    [Fact]
    public void The_same_facts_give_the_same_answer() =>
        AfterEveryStep(part =>
        {
            var again = new Dossier(part.Dossier.Part, part.Dossier.Route, [.. part.Dossier.Facts], part.Dossier.Around);
            Assert.Equal(Said(part.Dossier, part.Context), Said(part.Dossier, part.Context));
            Assert.Equal(Said(part.Dossier, part.Context), Said(again, part.Context));
            Assert.Equal(part.Dossier.State(), again.State());
        });

    [Fact]
    public void A_stage_reported_open_can_be_opened_and_one_reported_otherwise_cannot() =>
        AfterEveryStep(part =>
        {
            foreach (var gate in Gatekeeper.EvaluateAll(part.Dossier, part.Context))
            {
                var canBeOpened = gate.State == StageState.Open && part.Dossier.OpenAttempt is null;
                var decision = Attempts.Open(part.Dossier, gate.Stage, "ST-1", null, part.Context, part.Bench.Stamp(part.Worker));
                Assert.True(canBeOpened == decision.Refusal is null, $"{gate.Stage} is {gate.State}: {decision.Refusal?.Message}");
            }
        });

    [Fact]
    public void Every_refusal_says_why_and_leads_to_no_fact() =>
        AfterEveryStep(part =>
            Assert.All(
                part.Dossier.Route.Stages,
                stage =>
                {
                    var decision = Attempts.Open(part.Dossier, stage.Code, "ST-1", null, part.Context, part.Bench.Stamp(part.Worker));
                    Assert.True(decision.Refusal is null == decision.Facts.Count > 0);
                    Assert.True(decision.Refusal is null || decision.Refusal.Message.Length > 0);
                }
            )
        );

    [Fact]
    public void A_finished_part_is_one_whose_every_stage_counts() =>
        AfterEveryStep(part => Assert.Equal(part.Dossier.IsFinished(), part.Passes.Count() == part.Dossier.Route.Stages.Count));

    [Fact]
    public void Chance_reaches_every_state_but_shipped()
    {
        var wanted = Enum.GetValues<PartState>().Where(s => s != PartState.Shipped).ToHashSet();
        var seen = new System.Collections.Concurrent.ConcurrentDictionary<PartState, bool>();
        for (var round = 0; round < 20 && seen.Count < wanted.Count; round++)
        {
            AfterEveryStep(part => seen.TryAdd(part.Dossier.State(), true));
        }

        Assert.Equal(wanted.Order(), seen.Keys.Order());
    }

    [Fact]
    public void Worsening_a_reading_never_turns_a_fail_into_a_pass()
    {
        var value = Gen.Int[0, 30].Select(tenths => 9m + (tenths / 10m));
        Gen.Select(value.Array[2], value.Array[2])
            .Sample(
                (first, other) =>
                {
                    var worse = first.Zip(other, (a, b) => Missed(b) > Missed(a) ? b : a).ToArray();

                    Assert.True(VerdictOf(first) == Verdict.Pass || VerdictOf(worse) == Verdict.Fail);
                }
            );
    }

    private static decimal Missed(decimal value) => Math.Max(10m - value, value - 11m);

    private static Verdict VerdictOf(decimal[] values)
    {
        var part = new APart(ARoute.Of(ARoute.Stage("tune").Measuring("firstHz", 10, 11).Measuring("secondHz", 10, 11))).Opened("tune");
        part.TryRead(("firstHz", Numbers.Text(values[0])), ("secondHz", Numbers.Text(values[1]))).Accepted();
        return part.TryClose().Accepted().Verdict;
    }

    private static string[] Said(Dossier dossier, GateContext context) =>
        [.. Gatekeeper.EvaluateAll(dossier, context).SelectMany(g => g.Checks.Select(c => $"{g.Stage} {g.State} {c}"))];

    private static void AfterEveryStep(Action<APart> holds, Action? begin = null, int threads = -1, long iterations = 250) =>
        Story.Sample(
            story =>
            {
                begin?.Invoke();
                var part = new APart(AnyStage.RouteOf(story.Stages));
                foreach (var step in story.Steps)
                {
                    step.DoTo(part);
                    holds(part);
                }
            },
            iter: iterations,
            threads: threads,
            print: story =>
                $"{string.Join("; ", story.Stages.Select(s => s.ToString()))}\n{string.Join("\n", story.Steps.Select(s => s.ToString()))}"
        );
}
