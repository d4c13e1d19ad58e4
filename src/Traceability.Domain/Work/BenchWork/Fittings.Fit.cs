using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>Fits parts and lots into the slots of the stage now open.</summary>
public static partial class Fittings
{
    /// <summary>
    /// Leads to one fitting each. All or none are fitted. The context holds the candidates by position, and who fits them.
    /// </summary>
    public static Decision<IReadOnlyList<Fitting>> Fit(Dossier dossier, Guid attemptId, GateContext context, Stamp stamp)
    {
        if (!WhileOpen.Find(dossier, attemptId, context, out var open, out var stage, out var refusal))
        {
            return refusal;
        }

        var candidates = context.Inputs ?? new Dictionary<string, Input>();
        foreach (var position in candidates.Keys.Where(dossier.PresentFittings.ContainsKey))
        {
            return Refusal.Conflict(RefusalTexts.PositionIsFilled(position, dossier.Part.Serial), RefusalCode.PositionFilled);
        }

        if (candidates.Keys.FirstOrDefault(p => stage.Slot(p) is null) is { } unknown)
        {
            return Refusal.Invalid(
                "position",
                RefusalTexts.HasNoPosition(stage.Title, unknown, string.Join(", ", stage.Slots.Select(s => s.Position)))
            );
        }

        var gate = Gatekeeper.EvaluateInputs(dossier, stage, context);
        if (!gate.Open)
        {
            return Refusal.GateClosed(gate);
        }

        List<Fitting> fittings =
        [
            .. candidates.Values.Select(input =>
                input switch
                {
                    PartInput part => Fit(part.PartId, null, null, input.Position),
                    LotInput lot => Fit(null, lot.Lot.Id, lot.Quantity, input.Position),
                    _ => throw new ArgumentException($"unknown kind of input {input.GetType().Name}", nameof(context)),
                }
            ),
        ];
        return Decision.Accept<IReadOnlyList<Fitting>>(fittings, fittings);

        Fitting Fit(Guid? child, Guid? lot, decimal? quantity, string position) =>
            new(stamp.NewId(), dossier.Part.Id, open.Id, position, child, lot, quantity, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
    }
}
