using Traceability.Domain.Values;

namespace Traceability.Domain.Gates.Rules;

/// <summary>
/// Every slot is filled with something of the right kind: parts of the same model that passed their own route and are free,
/// lots that are in use, released, not expired and inside their pot life.
/// </summary>
public static class InputsFit
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "inputs";

    /// <summary>Judges all slots of the stage, the empty ones too.</summary>
    public static GateCheck? Check(GateQuestion q)
    {
        if (q.Context.Inputs is not { } inputs || (q.Stage.Slots.Count == 0 && inputs.Count == 0))
        {
            return null;
        }

        var empty = q.Stage.Slots.Where(s => s.Required && !inputs.ContainsKey(s.Position)).ToList();
        return empty.Count > 0
            ? new(
                Rule,
                false,
                GateTexts.StillEmpty(string.Join(", ", empty.Select(s => s.Label))),
                GateTexts.FitAs(empty[0].Accepts, empty[0].Label)
            )
            : CheckNamedOnly(q);
    }

    /// <summary>Judges only what is named.</summary>
    public static GateCheck? CheckNamedOnly(GateQuestion q)
    {
        var inputs = q.Context.Inputs ?? new Dictionary<string, Input>();
        foreach (var input in inputs.Values)
        {
            var problem = q.Stage.Slot(input.Position) is not { } slot
                ? GateTexts.HasNoPosition(q.Stage.Title, input.Position, string.Join(", ", q.Stage.Slots.Select(s => s.Position)))
                : input switch
                {
                    PartInput part => PartProblem(q, slot.PartKind, slot.Accepts, part),
                    LotInput lot => LotProblem(q, slot.LotKind, slot.Accepts, lot),
                    _ => null,
                };
            if (problem is not null)
            {
                return new(Rule, false, problem, GateTexts.FitAnother);
            }
        }

        var twice = inputs.Values.OfType<PartInput>().GroupBy(p => p.PartId).FirstOrDefault(g => g.Count() > 1);
        return twice is null
            ? new(
                Rule,
                true,
                inputs.Count == 0 ? GateTexts.NothingToFit : GateTexts.Fits(string.Join(", ", inputs.Values.Select(i => i.Name)))
            )
            : new(
                Rule,
                false,
                GateTexts.WasNamedFor(twice.First().Serial, string.Join(GateTexts.JoinedByAnd, twice.Select(p => p.Position))),
                GateTexts.FitAnother
            );
    }

    private static string? PartProblem(GateQuestion q, string? wantedKind, string accepts, PartInput part) =>
        part switch
        {
            _ when part.Kind != wantedKind => GateTexts.PartIsWrongForThisSlot(part.Serial, part.Kind, accepts),
            _ when part.Model != q.Dossier.Part.Model => GateTexts.IsForAnotherModel(part.Serial, part.Model, q.Dossier.Part.Model),
            _ when part.PartId == q.Dossier.Part.Id => GateTexts.CannotBeFittedInItself(part.Serial),
            { AlreadyFittedHere: true } => null,
            { FittedInSerial: { } parent } => GateTexts.IsAlreadyFittedIn(part.Serial, parent),
            { State: PartState.Scrapped or PartState.Shipped or PartState.OnHold or PartState.Nonconforming } => GateTexts.IsInState(
                part.Serial,
                Words.Of(part.State)
            ),
            { RouteFinished: false } => GateTexts.HasNotPassedItsOwnRouteYet(part.Serial),
            { FreeSince: { } since } when q.Context.At < since - ClockSkew.Allowed => GateTexts.WasNotFreeBefore(
                part.Serial,
                q.Context.Calendar.Say(since)
            ),
            { Problems: [var first, ..] } => GateTexts.HoldsStopped(part.Serial, first.Subject, first.Reason),
            _ => null,
        };

    private static string? LotProblem(GateQuestion q, string? wantedKind, string accepts, LotInput input)
    {
        var lot = input.Lot;
        return lot.Kind != wantedKind ? GateTexts.LotIsWrongForThisSlot(lot.Number, lot.Kind, accepts)
            : input.AlreadyFittedHere ? null
            : input.RetiredBecause is { } reason ? GateTexts.LotIsRetired(lot.Number, reason)
            : input.State == Records.LotState.Quarantined ? GateTexts.LotIsInQuarantine(lot.Number)
            : input.Holds.Count > 0 ? GateTexts.LotIsOnHold(lot.Number, input.Holds[0])
            : lot.ExpiresAt < q.Context.At ? GateTexts.LotExpiredOn(lot.Number, q.Context.Calendar.Say(lot.ExpiresAt.Value))
            : lot is { MixedAt: { } mixed, PotLifeMinutes: { } life } && mixed.AddMinutes(life) < q.Context.At
                ? GateTexts.LotIsPastItsPotLife(lot.Number, life, q.Context.Calendar.Say(mixed.AddMinutes(life)))
            : null;
    }
}
