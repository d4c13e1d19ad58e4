namespace Traceability.Domain.Gates.Rules;

/// <summary>
/// Every slot is filled with something of the right kind: parts of the same model that passed their own route and are free,
/// lots that are released, not expired and inside their pot life.
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
            ? new(Rule, false, $"still empty: {string.Join(", ", empty.Select(s => s.Label))}", $"fit {empty[0].Accepts} as {empty[0].Label}")
            : CheckNamedOnly(q);
    }

    /// <summary>Judges only what is named.</summary>
    public static GateCheck? CheckNamedOnly(GateQuestion q)
    {
        var inputs = q.Context.Inputs ?? new Dictionary<string, Input>();
        foreach (var input in inputs.Values)
        {
            var problem = q.Stage.Slot(input.Position) is not { } slot
                ? $"{q.Stage.Title} has no position '{input.Position}'; positions: {string.Join(", ", q.Stage.Slots.Select(s => s.Position))}"
                : input switch
                {
                    PartInput part => PartProblem(q, slot.PartKind, slot.Accepts, part),
                    LotInput lot => LotProblem(q, slot.LotKind, slot.Accepts, lot),
                    _ => null,
                };
            if (problem is not null)
            {
                return new(Rule, false, problem, "fit another");
            }
        }

        var twice = inputs.Values.OfType<PartInput>().GroupBy(p => p.PartId).FirstOrDefault(g => g.Count() > 1);
        return twice is null
            ? new(Rule, true, inputs.Count == 0 ? "nothing to fit" : $"fits: {string.Join(", ", inputs.Values.Select(i => i.Name))}")
            : new(Rule, false, $"{twice.First().Serial} was named for {string.Join(" and ", twice.Select(p => p.Position))}", "fit another");
    }

    private static string? PartProblem(GateQuestion q, string? wantedKind, string accepts, PartInput part) => part switch
    {
        _ when part.Kind != wantedKind => $"{part.Serial} is a {part.Kind}; this slot takes {accepts}",
        _ when part.Model != q.Dossier.Part.Model => $"{part.Serial} is for model {part.Model}, not {q.Dossier.Part.Model}",
        _ when part.PartId == q.Dossier.Part.Id => $"{part.Serial} cannot be fitted in itself",
        { AlreadyFittedHere: true } => null,
        { FittedInSerial: { } parent } => $"{part.Serial} is already fitted in {parent}",
        { State: PartState.Scrapped or PartState.Shipped or PartState.OnHold or PartState.Nonconforming } => $"{part.Serial} is {Words.Of(part.State)}",
        { RouteFinished: false } => $"{part.Serial} has not passed its own route yet",
        { FreeSince: { } since } when q.Context.At < since - Work.Timing.ClockSkew => $"{part.Serial} was not free before {q.Context.Calendar.Say(since)}",
        { Problems: [var first, ..] } => $"{part.Serial} holds {first.Subject}: {first.Reason}",
        _ => null,
    };

    private static string? LotProblem(GateQuestion q, string? wantedKind, string accepts, LotInput input)
    {
        var lot = input.Lot;
        return lot.Kind != wantedKind ? $"lot {lot.Number} is {lot.Kind}; this slot takes {accepts}"
            : input.AlreadyFittedHere ? null
            : input.State == Records.LotState.Quarantined ? $"lot {lot.Number} is in quarantine"
            : input.Holds.Count > 0 ? $"lot {lot.Number} is on hold: {input.Holds[0]}"
            : lot.ExpiresAt < q.Context.At ? $"lot {lot.Number} expired on {q.Context.Calendar.Say(lot.ExpiresAt.Value)}"
            : lot is { MixedAt: { } mixed, PotLifeMinutes: { } life } && mixed.AddMinutes(life) < q.Context.At ? $"lot {lot.Number} is past its pot life of {life} min, over at {q.Context.Calendar.Say(mixed.AddMinutes(life))}"
            : null;
    }
}
