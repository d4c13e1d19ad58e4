using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>Starts a stage on a part, if its gate is open.</summary>
public static partial class Attempts
{
    /// <summary>Leads to the attempt and the instruments used in it.</summary>
    public static Decision<Attempt> Open(Dossier dossier, string stageCode, string station, Guid? loadId, GateContext context, Stamp stamp)
    {
        if (dossier.Route.Find(stageCode) is not { } stage)
        {
            return Refusal.Invalid(
                "stage",
                RefusalTexts.RouteHasNoStage(dossier.Part.Serial, stageCode, string.Join(", ", dossier.Route.Stages.Select(s => s.Code)))
            );
        }

        var gate = Gatekeeper.Evaluate(dossier, stage, context);
        if (!gate.Open)
        {
            return Refusal.GateClosed(gate);
        }

        if (Timing.OutOfOrder(dossier, stamp.OccurredAt) is { } outOfOrder)
        {
            return outOfOrder;
        }

        var number = dossier.Attempts.Count(a => a.Stage == stageCode) + 1;
        var attempt = new Attempt(
            stamp.NewId(),
            dossier.Part.Id,
            stage.Code,
            number,
            station,
            loadId,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return Decision.Accept(attempt, [attempt, .. (context.Instruments ?? []).Select(i => Use(attempt, i, context, stamp))]);
    }

    private static InstrumentUse Use(Attempt attempt, InstrumentStanding i, GateContext context, Stamp stamp) =>
        new(
            stamp.NewId(),
            attempt.PartId,
            attempt.Id,
            i.Instrument.Id,
            i.Instrument.Code,
            i.Instrument.Kind,
            i.InForce(context.Day)?.Id,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
}
