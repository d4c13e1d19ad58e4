using Traceability.Domain.Records;

namespace Traceability.Domain.Work.QualityDecisions;

/// <summary>A permit with what was used of it: the parts on which a concession named it.</summary>
/// <param name="Permit">The permit.</param>
/// <param name="LotNumber">The lot to which it is limited, by its number; null when it is not.</param>
/// <param name="UsedOn">The parts on which it was used.</param>
public sealed record PermitStanding(ConcessionPermit Permit, string? LotNumber, IReadOnlySet<Guid> UsedOn)
{
    /// <summary>How many parts more it covers; null when their number is not limited.</summary>
    public int? Left => Permit.MostParts - UsedOn.Count is { } left ? Math.Max(0, left) : null;

    /// <summary>True when its last day is over.</summary>
    public bool RunOutOn(DateOnly day) => Permit.ValidUntil < day;

    /// <summary>Where it stands on a day: <c>open</c>, <c>used-up</c> or <c>expired</c>.</summary>
    public string StateOn(DateOnly day) =>
        RunOutOn(day) ? "expired"
        : Left == 0 ? "used-up"
        : "open";

    /// <summary>Why it does not cover this nonconformity; null when it does.</summary>
    /// <param name="n">The nonconformity.</param>
    /// <param name="lotInside">True when the lot of the permit is in the part.</param>
    /// <param name="day">The workshop's day of the decision.</param>
    public Refusal? ProblemWith(Nonconformity n, bool lotInside, DateOnly day)
    {
        var number = Permit.Number;
        return Permit.Code is { } code && code != n.Code ? NotCovered(RefusalTexts.PermitCoversAnotherCode(number, code, n.Code))
            : Permit.Stage is { } stage && stage != n.Stage ? NotCovered(RefusalTexts.PermitCoversAnotherStage(number, stage))
            : Permit.LotId is not null && !lotInside ? NotCovered(RefusalTexts.PermitCoversAnotherLot(number, LotNumber))
            : RunOutOn(day) ? NotCovered(RefusalTexts.PermitRanOut(number, Values.WorkshopCalendar.Say(Permit.ValidUntil!.Value)))
            : Left == 0 && !UsedOn.Contains(n.PartId) ? NotCovered(RefusalTexts.PermitIsUsedUp(number, Permit.MostParts, UsedOn.Count))
            : null;

        static Refusal NotCovered(string words) => Refusal.Conflict(words, RefusalCode.ConcessionDoesNotCover);
    }

    /// <summary>Its limits in words: "at most 5 parts, until 31 Dec 2026".</summary>
    public string Limits =>
        string.Join(
            ", ",
            new[]
            {
                Permit.MostParts is { } most
                    ? most == 1
                        ? RefusalTexts.AtMostOnePart
                        : RefusalTexts.AtMostParts(most)
                    : null,
                Permit.ValidUntil is { } last ? RefusalTexts.UntilDay(Values.WorkshopCalendar.Say(last)) : null,
            }.OfType<string>()
        );
}

/// <summary>A permit on which a decision is to rest: where it stands, whether its lot is in the part, and the workshop's day.</summary>
public sealed record PermitUse(PermitStanding Standing, bool LotInside, DateOnly Day)
{
    /// <summary>Why it does not cover this nonconformity; null when it does.</summary>
    public Refusal? ProblemWith(Nonconformity n) => Standing.ProblemWith(n, LotInside, Day);
}

/// <summary>A concession is given for parts to come.</summary>
public static class GivePermit
{
    /// <summary>Leads to the permit; it must say what it covers and where it ends.</summary>
    public static Decision<ConcessionPermit> Decide(
        string number,
        Guid? lot,
        string? code,
        string? stage,
        int? mostParts,
        DateOnly? validUntil,
        string reason,
        DateOnly today,
        Stamp stamp
    )
    {
        Refusal? problem =
            string.IsNullOrWhiteSpace(reason) ? Refusal.Invalid("reason", RefusalTexts.SayWhyItMayBeUsedUnconforming)
            : lot is null && code is null && stage is null ? Refusal.Invalid("lot", RefusalTexts.SayWhatItCovers)
            : mostParts is null && validUntil is null ? Refusal.Invalid("mostParts", RefusalTexts.ConcessionHasALimit)
            : mostParts is < 1 or > 100000 ? Refusal.Invalid("mostParts", RefusalTexts.NumberOfPartsOfAPermit)
            : validUntil < today ? Refusal.Invalid("validUntil", RefusalTexts.LastDayIsOverAlready)
            : null;
        if (problem is not null)
        {
            return problem;
        }

        var permit = new ConcessionPermit(
            stamp.NewId(),
            number,
            lot,
            code,
            stage,
            mostParts,
            validUntil,
            reason.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return Decision.Accept(permit, permit);
    }
}
