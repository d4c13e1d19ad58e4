using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Domain.Tests.Work.QualityDecisions;

/// <summary>A concession for parts to come covers what it names, as far as it goes, to the end of its last day.</summary>
public class PermitTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);
    private static readonly DateTimeOffset Then = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
    private static readonly Guid Lot = Guid.NewGuid();

    private static ConcessionPermit Permit(
        Guid? lot = null,
        string? code = "scratched-film",
        string? stage = null,
        int? mostParts = 2,
        DateOnly? validUntil = null
    ) => new(Guid.NewGuid(), "PC-1", lot, code, stage, mostParts, validUntil, "looked at it", Guid.Empty, Then, Then);

    private static Nonconformity Found(string code = "scratched-film", string? stage = "tune", Guid? on = null) =>
        new(Guid.NewGuid(), on ?? Guid.NewGuid(), null, stage, code, "a scratch", Guid.Empty, Then, Then);

    private static PermitStanding Standing(ConcessionPermit permit, params Guid[] usedOn) => new(permit, "F-7", usedOn.ToHashSet());

    private static Decision<ConcessionPermit> Give(
        Guid? lot = null,
        string? code = "scratched-film",
        string? stage = null,
        int? mostParts = 5,
        DateOnly? validUntil = null,
        string reason = "the edge is cut off"
    ) => GivePermit.Decide("PC-1", lot, code, stage, mostParts, validUntil, reason, Today, new Bench().Stamp(Somebody.QualityLead));

    private static void Covers(PermitStanding standing, Nonconformity n, bool lotInside = false, DateOnly? day = null) =>
        Assert.Null(new PermitUse(standing, lotInside, day ?? Today).ProblemWith(n));

    private static void DoesNotCover(string because, PermitStanding standing, Nonconformity n, bool lotInside = false, DateOnly? day = null)
    {
        var refusal = standing.ProblemWith(n, lotInside, day ?? Today)!;
        Assert.Equal(RefusalCode.ConcessionDoesNotCover, refusal.Code);
        Assert.Contains(because, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_permit_covers_the_code_and_the_stage_that_it_names()
    {
        Covers(Standing(Permit()), Found());
        Covers(Standing(Permit(stage: "tune")), Found());
        Covers(Standing(Permit(code: null, stage: "tune")), Found("dented"));
        DoesNotCover("dented", Standing(Permit()), Found("dented"));
        DoesNotCover("trim", Standing(Permit(stage: "trim")), Found());
    }

    [Fact]
    public void A_permit_for_a_lot_covers_what_that_lot_is_in()
    {
        Covers(Standing(Permit(lot: Lot)), Found(), lotInside: true);
        DoesNotCover("F-7", Standing(Permit(lot: Lot)), Found());
    }

    [Fact]
    public void A_permit_covers_to_the_end_of_its_last_day()
    {
        var standing = Standing(Permit(validUntil: Today));

        Covers(standing, Found());
        Assert.Equal("open", standing.StateOn(Today));
        DoesNotCover("2 Mar 2026", standing, Found(), day: Today.AddDays(1));
        Assert.Equal("expired", standing.StateOn(Today.AddDays(1)));
        Assert.Equal("open", Standing(Permit()).StateOn(Today.AddYears(9)));
    }

    [Fact]
    public void A_permit_covers_so_many_parts_and_those_it_was_used_on_once_more()
    {
        var (one, two) = (Guid.NewGuid(), Guid.NewGuid());

        Assert.Equal((1, "open"), (Standing(Permit(), one).Left, Standing(Permit(), one).StateOn(Today)));
        Covers(Standing(Permit(), one), Found());
        Assert.Equal((0, "used-up"), (Standing(Permit(), one, two).Left, Standing(Permit(), one, two).StateOn(Today)));
        DoesNotCover("PC-1", Standing(Permit(), one, two), Found());
        Covers(Standing(Permit(), one, two), Found(on: two));
        Assert.Equal(0, Standing(Permit(mostParts: 1), one, two).Left);
        Assert.Null(Standing(Permit(mostParts: null), one, two).Left);
    }

    [Fact]
    public void The_limits_of_a_permit_are_said_in_words()
    {
        Assert.Equal("at most 5 parts, until 31 Dec 2026", Standing(Permit(mostParts: 5, validUntil: new(2026, 12, 31))).Limits);
        Assert.Equal("at most 2 parts", Standing(Permit()).Limits);
        Assert.DoesNotContain("parts", Standing(Permit(mostParts: 1)).Limits, StringComparison.Ordinal);
        Assert.Equal("until 31 Dec 2026", Standing(Permit(mostParts: null, validUntil: new(2026, 12, 31))).Limits);
    }

    [Fact]
    public void A_permit_that_is_given_says_why_what_it_covers_and_where_it_ends()
    {
        Assert.Equal("the edge is cut off", Give(reason: " the edge is cut off ").Accepted().Reason);
        Assert.Equal(["reason"], Give(reason: " ").IsRefused(RefusalKind.Invalid).Errors.Keys);
        Assert.Equal(["lot"], Give(code: null).IsRefused(RefusalKind.Invalid).Errors.Keys);
        Assert.Equal(["mostParts"], Give(mostParts: null).IsRefused(RefusalKind.Invalid).Errors.Keys);
        Give(lot: Lot, code: null).Accepted();
        Give(code: null, stage: "tune").Accepted();
        Give(mostParts: null, validUntil: Today).Accepted();
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(100_000, true)]
    [InlineData(100_001, false)]
    public void A_permit_is_for_one_to_a_hundred_thousand_parts(int parts, bool given) =>
        Assert.Equal(given, Give(mostParts: parts).Refusal is null);

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    public void A_permit_is_not_given_for_days_that_are_over(int days, bool given) =>
        Assert.Equal(given ? null : "validUntil", Give(validUntil: Today.AddDays(days)).Refusal?.Errors.Keys.Single());

    [Fact]
    public void A_concession_on_a_permit_names_it_with_its_limits_and_nothing_else_rests_on_one()
    {
        var part = new APart(ARoute.Plain).Passed("mount");
        part.TryRaise().Accepted();
        var permit = Permit();
        Decision<Disposition> Decide(DispositionKind kind, PermitUse use) =>
            Dispositions.Decide(
                part.Dossier,
                part.OpenNonconformity.Id,
                kind,
                null,
                "only this one",
                "looked at it",
                Somebody.QualityLead,
                part.Bench.Stamp(Somebody.QualityLead),
                use
            );

        var decided = Decide(DispositionKind.Concession, new(Standing(permit), false, Today)).Accepted();
        Assert.Equal((permit.Id, "PC-1: at most 2 parts"), (decided.PermitId, decided.LimitedTo));
        Assert.Equal(
            ["permit"],
            Decide(DispositionKind.Regrade, new(Standing(permit), false, Today)).IsRefused(RefusalKind.Invalid).Errors.Keys
        );
        Assert.Equal(
            RefusalCode.ConcessionDoesNotCover,
            Decide(DispositionKind.Concession, new(Standing(Permit(code: "dented")), false, Today)).IsRefused(RefusalKind.Conflict).Code
        );
    }
}
