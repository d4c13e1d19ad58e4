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
            ? new(Rule, false, StillEmpty(string.Join(", ", empty.Select(s => s.Label))), FitAs(empty[0].Accepts, empty[0].Label))
            : CheckNamedOnly(q);
    }

    /// <summary>Judges only what is named.</summary>
    public static GateCheck? CheckNamedOnly(GateQuestion q)
    {
        var inputs = q.Context.Inputs ?? new Dictionary<string, Input>();
        foreach (var input in inputs.Values)
        {
            var problem = q.Stage.Slot(input.Position) is not { } slot
                ? HasNoPosition(q.Stage.Title, input.Position, string.Join(", ", q.Stage.Slots.Select(s => s.Position)))
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
            ? new(Rule, true, inputs.Count == 0 ? NothingToFit : Fits(string.Join(", ", inputs.Values.Select(i => i.Name))))
            : new(
                Rule,
                false,
                WasNamedFor(twice.First().Serial, string.Join(GateTexts.JoinedByAnd, twice.Select(p => p.Position))),
                GateTexts.FitAnother
            );
    }

    private static string? PartProblem(GateQuestion q, string? wantedKind, string accepts, PartInput part) =>
        part switch
        {
            _ when part.Kind != wantedKind => PartIsWrongForThisSlot(part.Serial, part.Kind, accepts),
            _ when part.Model != q.Dossier.Part.Model => IsForAnotherModel(part.Serial, part.Model, q.Dossier.Part.Model),
            _ when part.PartId == q.Dossier.Part.Id => CannotBeFittedInItself(part.Serial),
            { AlreadyFittedHere: true } => null,
            { FittedInSerial: { } parent } => IsAlreadyFittedIn(part.Serial, parent),
            { State: PartState.Scrapped or PartState.Shipped or PartState.OnHold or PartState.Nonconforming } => IsInState(
                part.Serial,
                Words.Of(part.State)
            ),
            { RouteFinished: false } => HasNotPassedItsOwnRouteYet(part.Serial),
            { FreeSince: { } since } when q.Context.At < since - ClockSkew.Allowed => WasNotFreeBefore(
                part.Serial,
                q.Context.Calendar.Say(since)
            ),
            { Problems: [var first, ..] } => HoldsStopped(part.Serial, first.Subject, first.Reason),
            _ => null,
        };

    private static string? LotProblem(GateQuestion q, string? wantedKind, string accepts, LotInput input)
    {
        var lot = input.Lot;
        return lot.Kind != wantedKind ? LotIsWrongForThisSlot(lot.Number, lot.Kind, accepts)
            : input.AlreadyFittedHere ? null
            : input.RetiredBecause is { } reason ? LotIsRetired(lot.Number, reason)
            : input.State == Records.LotState.Quarantined ? LotIsInQuarantine(lot.Number)
            : input.Holds.Count > 0 ? LotIsOnHold(lot.Number, input.Holds[0])
            : lot.ExpiresAt < q.Context.At ? LotExpiredOn(lot.Number, q.Context.Calendar.Say(lot.ExpiresAt.Value))
            : lot is { MixedAt: { } mixed, PotLifeMinutes: { } life } && mixed.AddMinutes(life) < q.Context.At
                ? LotIsPastItsPotLife(lot.Number, life, q.Context.Calendar.Say(mixed.AddMinutes(life)))
            : null;
    }

    private static string StillEmpty(string labels) => GateTexts.Words.Say([labels]);

    private static string FitAs(string accepts, string label) => GateTexts.Words.Say([accepts, label]);

    private static string HasNoPosition(string stage, string position, string positions) =>
        GateTexts.Words.Say([stage, position, positions]);

    private static string NothingToFit => GateTexts.Words.Say();

    private static string Fits(string names) => GateTexts.Words.Say([names]);

    private static string WasNamedFor(string serial, string positions) => GateTexts.Words.Say([serial, positions]);

    private static string PartIsWrongForThisSlot(string serial, string partKind, string accepts) =>
        GateTexts.Words.Say([serial, partKind, accepts]);

    private static string IsForAnotherModel(string serial, string model, string model2) => GateTexts.Words.Say([serial, model, model2]);

    private static string CannotBeFittedInItself(string serial) => GateTexts.Words.Say([serial]);

    private static string IsAlreadyFittedIn(string serial, string parent) => GateTexts.Words.Say([serial, parent]);

    private static string IsInState(string serial, string state) => GateTexts.Words.Say([serial, state]);

    private static string HasNotPassedItsOwnRouteYet(string serial) => GateTexts.Words.Say([serial]);

    private static string WasNotFreeBefore(string serial, string since) => GateTexts.Words.Say([serial, since]);

    private static string HoldsStopped(string serial, string subject, string reason) => GateTexts.Words.Say([serial, subject, reason]);

    private static string LotIsWrongForThisSlot(string lot, string lotKind, string accepts) => GateTexts.Words.Say([lot, lotKind, accepts]);

    private static string LotIsRetired(string lot, string reason) => GateTexts.Words.Say([lot, reason]);

    private static string LotIsInQuarantine(string lot) => GateTexts.Words.Say([lot]);

    private static string LotIsOnHold(string lot, string hold) => GateTexts.Words.Say([lot, hold]);

    private static string LotExpiredOn(string lot, string expiresAt) => GateTexts.Words.Say([lot, expiresAt]);

    private static string LotIsPastItsPotLife(string lot, int life, string life2) => GateTexts.Words.Say([lot, life, life2]);
}
