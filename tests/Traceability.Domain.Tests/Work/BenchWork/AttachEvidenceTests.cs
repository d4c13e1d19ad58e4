using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Tests.Stages.AcousticTest.Noise;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work.BenchWork;

public class AttachEvidenceTests
{
    private static APart Listening =>
        new APart(
            ARoute.Of(
                ARoute.Stage("listen") with
                {
                    Qualification = "listening",
                    Evidence = [new("noise", "noise-recording", false), new("log", "climate-log", false)],
                }
            )
        )
        {
            Worker = Somebody.Builder.QualifiedFor("listening"),
        }.Opened("listen");

    private static Decision<EvidenceRecord> Attach(APart part, AttachedFile file) =>
        EvidenceFiles.Attach(part.Dossier, part.Dossier.OpenAttempt!.Id, file, part.Context, part.Bench.Stamp(part.Worker));

    [Fact]
    public void A_file_is_of_the_kind_that_the_route_gives_its_name_whatever_the_sender_calls_it() =>
        Assert.Equal(
            "noise-recording",
            Attach(Listening, new("noise", "photo", "audio/wav", new('0', 64), Waves.Float([0, 0.1f]), 1)).Accepted().Kind
        );

    [Fact]
    public void A_name_that_the_stage_does_not_have_is_refused_with_those_it_has_and_photos_last() =>
        Attach(Listening, new("sound", "noise-recording", "audio/wav", new('0', 64), Waves.Float([0, 0.1f]), 1))
            .IsRefused(RefusalKind.Invalid, "noise (noise-recording), log (climate-log), ");

    [Fact]
    public void The_first_five_faults_of_a_bad_file_are_said_and_all_of_them_listed()
    {
        var log = "time,temperature_c,humidity_pct\n" + string.Concat(Enumerable.Repeat("not a time,20,50\n", 8));

        var refusal = Attach(Listening, new("log", "climate-log", "text/csv", new('0', 64), System.Text.Encoding.UTF8.GetBytes(log), null))
            .IsRefused(RefusalKind.Invalid, "log");

        var faults = refusal.Errors["file"];
        Assert.True(faults.Length > 5, string.Join(" | ", faults));
        Assert.Contains(faults[4], refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(faults[5], refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Whoever_may_not_do_the_stage_attaches_nothing_to_it()
    {
        var part = Listening;
        part.Worker = Somebody.OtherBuilder;

        Attach(part, new("noise", "noise-recording", "audio/wav", new('0', 64), Waves.Float([0, 0.1f]), 1))
            .IsRefused(RefusalKind.Conflict, "not qualified");
    }
}
