using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Domain.Tests.Routes;

public class RouteApprovalTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 14, 20, 0, TimeSpan.Zero);
    private static readonly Actor Approver = new(Guid.NewGuid(), "P2", "Paul Two", new HashSet<Role> { Role.Quality }, []);
    private static readonly RouteRevision Proposal = new(
        Guid.NewGuid(),
        "M-1",
        "unit",
        3,
        "",
        "",
        "P1",
        "",
        new(2026, 1, 31),
        Approver.PersonId,
        Now,
        Now
    );

    [Fact]
    public void A_file_may_name_its_approver_or_nobody()
    {
        Assert.Equal("P2", RouteText.Read(ARouteFile.Good, StageMethods.Requirements).Route!.ApprovedBy);
        Assert.Equal("", RouteText.Read(ARouteFile.With("approvedBy: P2\n", "").Text, StageMethods.Requirements).Route!.ApprovedBy);
    }

    [Fact]
    public void The_first_revision_of_all_counts_from_the_day_of_its_file_because_it_takes_nothings_place()
    {
        Assert.Equal(new DateOnly(2026, 1, 31), Decided(Proposal with { Revision = 1 }, latest: 0).Value!.EffectiveFrom);
        Assert.Equal(Today, Decided(Proposal with { Revision = 2 }, latest: 1).Value!.EffectiveFrom);
    }

    [Fact]
    public void It_is_in_force_from_the_day_of_the_file_and_never_before_it_is_approved()
    {
        Assert.Equal(Today, Decided(Proposal).Value!.EffectiveFrom);
        Assert.Equal(Today.AddDays(3), Decided(Proposal with { EffectiveFrom = Today.AddDays(3) }).Value!.EffectiveFrom);
    }

    [Theory]
    [InlineData("P2")]
    [InlineData("p2")]
    public void Its_author_may_not(string author) =>
        Assert.Contains(
            "somebody else must approve it",
            Refused(RefusalKind.Conflict, Proposal with { Author = author }),
            StringComparison.Ordinal
        );

    [Fact]
    public void Its_author_may_where_the_workshop_works_single_handed_and_says_why_alone()
    {
        var own = Proposal with { Author = Approver.Badge };
        var alone = Approver with { SingleHanded = new() };
        Assert.Contains(
            "say why one person does here what two should",
            RouteApprovals.Approve(own, null, null, 2, alone, "tried", Today, Stamp).Refusal!.Message,
            StringComparison.Ordinal
        );

        var decided = RouteApprovals.Approve(own, null, null, 2, alone.Alone("the only one here"), "tried", Today, Stamp);
        var signed = Assert.Single(decided.Facts.OfType<SecondSignIn>());
        Assert.Equal((SecondPerson.OfApproval, own.Id, "the only one here"), (signed.Rule, signed.SubjectId, signed.Reason));
        Assert.Empty(RouteApprovals.Approve(Proposal, null, null, 2, alone, "tried", Today, Stamp).Facts.OfType<SecondSignIn>());
    }

    [Fact]
    public void What_was_loaded_as_approved_is_not_approved_again() =>
        Assert.Contains(
            "loaded as approved by P9",
            Refused(RefusalKind.Conflict, Proposal with { ApprovedBy = "P9" }),
            StringComparison.Ordinal
        );

    [Fact]
    public void Nobody_approves_twice() =>
        Assert.Contains(
            "approved already",
            Refused(RefusalKind.Conflict, Proposal, already: Decided(Proposal).Value),
            StringComparison.Ordinal
        );

    [Fact]
    public void One_that_would_never_be_used_is_not_approved() =>
        Assert.Contains("would never be used", Refused(RefusalKind.Conflict, Proposal, latest: 4), StringComparison.Ordinal);

    [Fact]
    public void It_needs_a_reason() =>
        Assert.Contains("say why", Refused(RefusalKind.Invalid, Proposal, reason: " "), StringComparison.Ordinal);

    [Fact]
    public void Somebody_else_than_its_author_rejects_it_and_says_why()
    {
        Assert.Equal("too wide", RouteApprovals.Reject(Proposal, null, null, Approver, " too wide ", Stamp).Value!.Reason);
        Assert.Equal(RefusalKind.Invalid, RouteApprovals.Reject(Proposal, null, null, Approver, " ", Stamp).Refusal!.Kind);
        Assert.Contains(
            "its author withdraws it",
            RouteApprovals.Reject(Proposal with { Author = "p2" }, null, null, Approver, "no", Stamp).Refusal!.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Its_author_alone_withdraws_it()
    {
        var own = Proposal with { Author = "P2" };
        Assert.Equal(RouteEndingKind.Withdrawn, RouteApprovals.Withdraw(own, null, null, Approver, "a slip", Stamp).Value!.Kind);
        Assert.Equal(RefusalKind.Forbidden, RouteApprovals.Withdraw(Proposal, null, null, Approver, "no", Stamp).Refusal!.Kind);
    }

    [Fact]
    public void What_was_decided_is_not_decided_again()
    {
        var rejected = RouteApprovals.Reject(Proposal, null, null, Approver, "too wide", Stamp).Value!;
        var approved = Decided(Proposal).Value!;
        Refusal?[] refusals =
        [
            RouteApprovals.Approve(Proposal, null, rejected, 2, Approver, "after all", Today, Stamp).Refusal,
            RouteApprovals.Reject(Proposal, null, rejected, Approver, "again", Stamp).Refusal,
            RouteApprovals.Reject(Proposal, approved, null, Approver, "too late", Stamp).Refusal,
            RouteApprovals.Withdraw(Proposal with { Author = "P2" }, approved, null, Approver, "too late", Stamp).Refusal,
        ];
        Assert.All(refusals, r => Assert.Equal(RefusalCode.AlreadyDone, r!.Code));
        Assert.Contains("was rejected already: too wide", refusals[0]!.Message, StringComparison.Ordinal);
    }

    private static Stamp Stamp => new(Approver.PersonId, Now, Now, Guid.NewGuid);

    private static Decision<RouteApproval> Decided(
        RouteRevision revision,
        RouteApproval? already = null,
        int latest = 2,
        string reason = "tried on ten parts"
    ) => RouteApprovals.Approve(revision, already, null, latest, Approver, reason, Today, new(Approver.PersonId, Now, Now, Guid.NewGuid));

    private static string Refused(
        RefusalKind kind,
        RouteRevision revision,
        RouteApproval? already = null,
        int latest = 2,
        string reason = "tried on ten parts"
    )
    {
        var refusal = Decided(revision, already, latest, reason).Refusal!;
        Assert.Equal(kind, refusal.Kind);
        return refusal.Message;
    }
}
