using Traceability.Domain.Evidence;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>
/// Keeps a file as evidence of the attempt now open. It is read through first, so that a bad one is refused while the good one is still at
/// hand.
/// </summary>
public static partial class EvidenceFiles
{
    /// <summary>
    /// Leads to the evidence. A second file under the same name replaces the first for judging; both are kept. The context says who
    /// attaches it.
    /// </summary>
    public static Decision<EvidenceRecord> Attach(Dossier dossier, Guid attemptId, AttachedFile file, GateContext context, Stamp stamp) =>
        !WhileOpen.Find(dossier, attemptId, context, out var open, out var stage, out var refusal) ? refusal
        : Problem(stage, file) is { } problem ? problem
        : Accept(
            new EvidenceRecord(
                stamp.NewId(),
                dossier.Part.Id,
                open.Id,
                null,
                file.Name,
                KindOf(stage, file),
                file.MediaType,
                file.Sha256,
                file.Bytes.Length,
                file.FullScaleV,
                stamp.By,
                stamp.OccurredAt,
                stamp.RecordedAt
            )
        );

    /// <summary>
    /// The log of a load: evidence of every part in it. <paramref name="parts"/> are those that are still in; whoever keeps it must be one
    /// who may do the stage on each.
    /// </summary>
    public static Decision<EvidenceRecord> AttachToLoad(
        Load load,
        IReadOnlyList<Dossier> parts,
        AttachedFile file,
        GateContext context,
        Stamp stamp
    ) =>
        parts[0].Route.Find(load.Stage) is not { } stage
            ? Refusal.Conflict(RefusalTexts.RouteHasNoStageAnyMore(parts[0].Part.Serial, load.Stage))
        : PartsRefused.From(parts.Select(p => (p.Part.Serial, MayNotWork(p, load, context))), RefusalTexts.LogWasNotKept) is { } refused
            ? refused
        : Problem(stage, file) is { } problem ? problem
        : Accept(
            new EvidenceRecord(
                stamp.NewId(),
                null,
                null,
                load.Id,
                file.Name,
                KindOf(stage, file),
                file.MediaType,
                file.Sha256,
                file.Bytes.Length,
                file.FullScaleV,
                stamp.By,
                stamp.OccurredAt,
                stamp.RecordedAt
            )
        );

    /// <summary>
    /// What is wrong with a file that is kept all the same: a recording that is clipped or silent is a recording, but nothing is made of
    /// it.
    /// </summary>
    public static IReadOnlyList<string> Warnings(string kind, AttachedFile file) =>
        kind == EvidenceKind.NoiseRecording.Code()
            ?
            [
                .. EvidenceCheck
                    .Problems(EvidenceKind.NoiseRecording, file.Bytes, (double?)file.FullScaleV)
                    .Where(MayBeKept)
                    .Select(p => RefusalTexts.FileIsKeptWithoutValue(p)),
            ]
            : [];

    private static Refusal? MayNotWork(Dossier part, Load load, GateContext context) =>
        WhileOpen.Find(part, part.Attempts.First(a => a.Attempt.LoadId == load.Id).Id, context, out _, out _, out var refusal)
            ? null
            : refusal;

    private static bool MayBeKept(FileProblem problem) => problem.Fault is FileFault.Clipped or FileFault.Silent;

    private static Decision<EvidenceRecord> Accept(EvidenceRecord evidence) => Decision.Accept(evidence, [evidence]);

    private static string KindOf(Stage stage, AttachedFile file) =>
        stage.Evidence.FirstOrDefault(e => e.Name == file.Name)?.Kind ?? file.Kind;

    private static Refusal? Problem(Stage stage, AttachedFile file)
    {
        var need = stage.Evidence.FirstOrDefault(e => e.Name == file.Name);
        if (need is null && file.Kind != EvidenceKind.Photo.Code())
        {
            return Refusal.Invalid(
                "name",
                RefusalTexts.TakesNoSuchFile(
                    stage.Title,
                    file.Name,
                    string.Join(", ", stage.Evidence.Select(e => $"{e.Name} ({e.Kind})").Append(RefusalTexts.PhotosUnderAnyName))
                )
            );
        }

        var kind = EvidenceKinds.FromCode(KindOf(stage, file))!.Value;
        var problems = EvidenceCheck.Problems(kind, file.Bytes, (double?)file.FullScaleV);
        return problems.Count == 0 || problems.All(MayBeKept)
            ? null
            : new Refusal(
                RefusalKind.Invalid,
                RefusalTexts.FileCannotBeUsed(file.Name, kind.Code(), string.Join(" ", problems.Take(5))),
                [],
                new Dictionary<string, string[]> { ["file"] = [.. problems.Take(100).Select(p => p.ToString())] }
            );
    }
}
