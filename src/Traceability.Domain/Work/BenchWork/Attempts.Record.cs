using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>A file handed in together with a record: the fact that it was kept, and its bytes.</summary>
public sealed record AttachedFile(
    string Name,
    string Kind,
    string MediaType,
    string Sha256,
    ReadOnlyMemory<byte> Bytes,
    decimal? FullScaleV
);

/// <summary>A stage done in one go: opened, read, fitted, evidenced and closed by one command, or not at all.</summary>
public static partial class Attempts
{
    /// <summary>
    /// Leads to all facts of the attempt. The context holds instruments and inputs. It opens and closes at one moment, so that a minimum
    /// time open cannot be met in one go; only where a log judges the stage does <paramref name="openedAt"/> say when it began, and then it
    /// must.
    /// </summary>
    public static Decision<Closing> Record(
        Dossier dossier,
        string stage,
        string station,
        IReadOnlyList<EnteredValue> values,
        IReadOnlyList<AttachedFile> files,
        string? note,
        DateTimeOffset? openedAt,
        GateContext context,
        Stamp stamp
    )
    {
        if (Problem(dossier.Route.Find(stage), openedAt, stamp) is { } problem)
        {
            return problem;
        }

        var facts = new List<Fact>();
        var began = openedAt ?? stamp.OccurredAt;
        var opened = Attempts.Open(
            dossier,
            stage,
            station,
            null,
            context with
            {
                At = began,
                Inputs = null,
            },
            stamp with
            {
                OccurredAt = began,
            }
        );
        if (opened.Refusal is { } closedGate)
        {
            return closedGate;
        }

        var attempt = opened.Value!;
        Add(opened.Facts);
        var readings = Readings.Take(dossier, attempt.Id, values, ReadingSource.Entered, context, stamp);
        if (readings.Refusal is { } badReading)
        {
            return badReading;
        }

        Add(readings.Facts);
        var fitted = Fittings.Fit(dossier, attempt.Id, context with { Inputs = NewOnly(context) }, stamp);
        if (fitted.Refusal is { } doesNotFit)
        {
            return doesNotFit;
        }

        Add(fitted.Facts);
        var evidence = new List<EvidenceFile>();
        foreach (var file in files)
        {
            var attached = EvidenceFiles.Attach(dossier, attempt.Id, file, context, stamp);
            if (attached.Refusal is { } badFile)
            {
                return badFile;
            }

            Add(attached.Facts);
            evidence.Add(new(attached.Value!.Id, file.Name, attached.Value.Kind, file.Bytes, file.FullScaleV));
        }

        var closed = Attempts.Close(dossier, attempt.Id, evidence, note, context, stamp);
        return closed.Refusal is { } notYet ? notYet : Decision.Accept(closed.Value!, [.. facts, .. closed.Facts]);

        void Add(IReadOnlyList<Fact> more)
        {
            facts.AddRange(more);
            dossier = dossier.With(more);
        }
    }

    private static Refusal? Problem(Stage? stage, DateTimeOffset? openedAt, Stamp stamp) =>
        (stage, openedAt) switch
        {
            (null, _) => null,
            ({ } s, null) => JudgesALog(s) ? Refusal.Conflict(RefusalTexts.RecordNeedsOpenedAt(s.Title)) : null,
            ({ } s, _) when !JudgesALog(s) => Refusal.Invalid("openedAt", RefusalTexts.OnlyALogHasOpenedAt(s.Title)),
            (_, { } at) when at < Timing.Earliest => Refusal.Invalid("openedAt", RefusalTexts.OccurredBeforeAnyRecord(at, Timing.Earliest)),
            ({ } s, { } at) when at > stamp.OccurredAt => Refusal.Invalid(
                "openedAt",
                RefusalTexts.OpenedAfterItsEnd(s.Title, at, stamp.OccurredAt)
            ),
            _ => null,
        };

    private static bool JudgesALog(Stage stage) => StageMethods.Find(stage.Method) is { JudgesALog: true };

    private static Dictionary<string, Input> NewOnly(GateContext context) =>
        (context.Inputs ?? new Dictionary<string, Input>())
            .Where(i => i.Value is PartInput { AlreadyFittedHere: false } or LotInput { AlreadyFittedHere: false })
            .ToDictionary();
}
