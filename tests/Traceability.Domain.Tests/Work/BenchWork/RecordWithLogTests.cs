using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work.BenchWork;

/// <summary>A stage in one go says when it began only where a log over its time judges it.</summary>
public class RecordWithLogTests
{
    private static APart Part =>
        new(
            ARoute.Of(
                ARoute.Stage("mount"),
                ARoute.Stage("soak") with
                {
                    Method = "climate-soak",
                    Evidence = [new("log", "climate-log", true)],
                },
                ARoute.Stage("look") with
                {
                    Evidence = [new("picture", "photo", true)],
                }
            )
        );

    private static Decision<Closing> Record(APart part, string stage, DateTimeOffset? openedAt, params AttachedFile[] files) =>
        Attempts.Record(part.Dossier, stage, "ST-1", [], files, null, openedAt, part.Context, part.Bench.Stamp(part.Worker));

    [Fact]
    public void A_stage_that_a_log_judges_must_say_when_it_began() =>
        Record(Part.Passed("mount"), "soak", null).IsRefused(RefusalKind.Conflict, "Soak", "openedAt");

    [Fact]
    public void Another_stage_may_not() =>
        Assert.Contains("openedAt", Record(Part, "mount", Part.Bench.Now).IsRefused(RefusalKind.Invalid, "Mount").Errors.Keys);

    [Fact]
    public void It_does_not_begin_before_any_record_or_after_its_own_end()
    {
        var part = Part.Passed("mount");
        DateTimeOffset end = part.Bench.Now,
            first = Timing.Earliest;

        Assert.Contains("openedAt", Record(part, "soak", first.AddTicks(-1)).IsRefused(RefusalKind.Invalid).Errors.Keys);
        Assert.Equal(RefusalCode.OutOfOrder, Record(part, "soak", first).IsRefused(RefusalKind.Conflict).Code);
        Assert.Contains("openedAt", Record(part, "soak", end.AddTicks(1)).IsRefused(RefusalKind.Invalid).Errors.Keys);
        Record(part, "soak", end).IsRefused(RefusalKind.Conflict, "still needs: log");
    }

    [Fact]
    public void It_begins_when_it_says_and_not_when_it_ends()
    {
        var part = Part.Passed("mount");
        part.Bench.Later(60);

        Record(part, "soak", part.Bench.Now.AddHours(-2)).IsRefused(RefusalKind.Conflict, "earlier than the last event");
    }

    [Fact]
    public void Files_handed_in_with_a_record_are_kept_as_its_evidence()
    {
        var part = Part.Passed("mount");
        var look = new APart(ARoute.Of(part.StageOf("look")));
        var photo = new AttachedFile("picture", "photo", "image/png", new string('0', 64), Photo, null);

        Record(look, "look", null).IsRefused(RefusalKind.Conflict, "picture");
        var kept = Assert.Single(Record(look, "look", null, photo).Facts.OfType<EvidenceRecord>());

        Assert.Equal(("picture", "photo", (long)Photo.Length), (kept.Name, kept.Kind, kept.LengthBytes));
        Record(look, "look", null, photo with { Name = "other", Kind = "climate-log" }).IsRefused(RefusalKind.Invalid, "other");
    }

    // The smallest picture there is: a PNG of one point.
    private static readonly byte[] Photo = Convert.FromBase64String(
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="
    );
}
