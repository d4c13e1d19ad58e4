using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Loads;

namespace Traceability.Domain.Tests.Work.Loads;

/// <summary>Many parts under one start and one end: all of them or none.</summary>
public class LoadRunTests
{
    private static readonly Route Curing = ARoute.Of(ARoute.Stage("cure") with { Loads = true, MinimumOpenMinutes = 60 });

    private static APart[] Three(Bench bench) => [.. Enumerable.Range(0, 3).Select(_ => new APart(Curing, bench))];

    private static Decision<LoadStart> Start(Bench bench, params APart[] parts) =>
        LoadRuns.Open([.. parts.Select(p => p.Dossier)], "cure", "OVEN-1", parts[0].Context, bench.Stamp(Somebody.Builder));

    private static Decision<IReadOnlyList<EndedPart>> End(Bench bench, params APart[] parts) =>
        LoadRuns.Close(
            [.. parts.Select(p => new EndingPart(p.Dossier, p.Dossier.OpenAttempt?.Id ?? Guid.Empty, [], p.Context))],
            "done",
            bench.Stamp(Somebody.Builder)
        );

    private static void Keep(LoadStart start, params APart[] parts)
    {
        foreach (var (part, loaded) in parts.Zip(start.Parts))
            part.Add([.. loaded.Facts]);
    }

    [Fact]
    public void A_load_starts_one_attempt_for_each_part_in_their_order_and_names_the_instruments_once()
    {
        var bench = new Bench();
        var parts = Three(bench);
        parts[0].Instruments = [Something.Instrument("oven", new(2026, 1, 1), new(2027, 1, 1))];

        var decision = Start(bench, parts);
        var start = decision.Accepted();

        Assert.Equal(parts.Select(p => p.Dossier.Part.Id), start.Parts.Select(p => p.PartId));
        Assert.All(
            start.Parts,
            p => Assert.Equal((start.Load.Id, "cure", "OVEN-1"), (p.Attempt.LoadId, p.Attempt.Stage, p.Attempt.Station))
        );
        Assert.All(start.Parts, p => Assert.Equal([typeof(Attempt), typeof(InstrumentUse)], p.Facts.Select(f => f.GetType())));
        Assert.Equal(["oven-1"], start.Load.Instruments);
        Assert.Equal([start.Load], decision.Facts);
    }

    [Fact]
    public void Without_instruments_a_load_names_none() => Assert.Empty(Start(new Bench(), Three(new Bench())).Accepted().Load.Instruments);

    [Fact]
    public void One_closed_gate_keeps_the_whole_load_from_starting_and_every_part_refused_is_named()
    {
        var bench = new Bench();
        var parts = Three(bench);
        parts[1].Hold("cracked");

        var refusal = Start(bench, parts).IsRefused(RefusalKind.Conflict, "C-1 is on hold: cracked");

        Assert.Equal(["C-1"], refusal.Errors.Keys);
        Assert.All(refusal.Errors.Values, reasons => Assert.Equal(["C-1 is on hold: cracked"], reasons));
        var check = Assert.Single(refusal.Checks);
        Assert.Equal("C-1: C-1 is on hold: cracked", check.Because);
        Assert.False(check.Met);
    }

    [Fact]
    public void A_stage_that_is_done_part_by_part_takes_no_load()
    {
        var part = new APart(ARoute.Plain);

        LoadRuns
            .Open([part.Dossier], "mount", "ST-1", part.Context, part.Bench.Stamp(Somebody.Builder))
            .IsRefused(RefusalKind.Invalid, "Mount");
    }

    [Fact]
    public void A_stage_that_the_route_of_a_part_does_not_have_is_refused_by_that_part()
    {
        var part = new APart(Curing);

        var refusal = LoadRuns
            .Open([part.Dossier], "polish", "ST-1", part.Context, part.Bench.Stamp(Somebody.Builder))
            .IsRefused(RefusalKind.Invalid, "no stage 'polish'");

        // No gate was asked, so that the reason is the refusal's own words.
        Assert.Empty(refusal.Checks);
        Assert.Contains("no stage 'polish'", Assert.Single(refusal.Errors["C-1"]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_ends_with_a_verdict_for_each_part()
    {
        var bench = new Bench();
        var parts = Three(bench);
        Keep(Start(bench, parts).Accepted(), parts);
        bench.Later(60);

        var decision = End(bench, parts);

        Assert.Equal([Verdict.Pass, Verdict.Pass, Verdict.Pass], decision.Accepted().Select(e => e.Closing.Verdict));
        Assert.All(decision.Accepted(), e => Assert.Equal("done", Assert.IsType<AttemptEnding>(Assert.Single(e.Facts)).Note));
        Assert.Empty(decision.Facts);
    }

    [Fact]
    public void A_load_of_which_one_part_may_not_end_ends_for_none()
    {
        var bench = new Bench();
        var parts = Three(bench);
        Keep(Start(bench, parts).Accepted(), parts);
        bench.Later(59);

        End(bench, parts[0]).IsRefused(RefusalKind.Conflict, "lasts at least 60 min");
        bench.Later(1);
        parts[0].TryClose().Accepted();
        End(bench, parts[1..]).Accepted();
        End(bench, parts[1], parts[0]).IsRefused(RefusalKind.NotFound);
    }
}
