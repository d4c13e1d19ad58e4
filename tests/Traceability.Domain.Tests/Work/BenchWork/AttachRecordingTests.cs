using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Tests.Stages.AcousticTest.Noise;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work.BenchWork;

public class AttachRecordingTests
{
    [Fact]
    public void A_clipped_recording_is_kept_with_a_warning_that_names_the_sample()
    {
        var file = Recording(0, 1, 1, 1, 0.5f);

        Assert.Null(Attach(file).Refusal);
        Assert.Contains("first at sample 2", Assert.Single(EvidenceFiles.Warnings("noise-recording", file)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_silent_recording_is_kept_with_a_warning()
    {
        Assert.Null(Attach(Recording(0, 0, 0, 0)).Refusal);
        Assert.Contains(
            "silent",
            Assert.Single(EvidenceFiles.Warnings("noise-recording", Recording(0, 0, 0, 0))),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_good_recording_needs_no_warning() =>
        Assert.Empty(EvidenceFiles.Warnings("noise-recording", Recording(0, 0.1f, -0.1f, 0.2f)));

    [Fact]
    public void An_empty_recording_is_refused() => Attach(Recording()).IsRefused(RefusalKind.Invalid, "empty");

    private static Decision<Domain.Records.EvidenceRecord> Attach(AttachedFile file)
    {
        var part = new APart(ARoute.Of(ARoute.Stage("listen") with { Evidence = [new("noise", "noise-recording", false)] })).Opened(
            "listen"
        );
        return EvidenceFiles.Attach(part.Dossier, part.Dossier.OpenAttempt!.Id, file, part.Context, part.Bench.Stamp(Somebody.Builder));
    }

    private static AttachedFile Recording(params float[] samples) =>
        new("noise", "noise-recording", "audio/wav", new string('0', 64), Waves.Float(samples), 1);
}
