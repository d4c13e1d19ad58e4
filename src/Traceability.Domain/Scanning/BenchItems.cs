using Traceability.Domain.Codes;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Scanning;

/// <summary>Things laid on the bench: parts, lots, instruments, slots, numbers, and text that must be looked up first.</summary>
internal static class BenchItems
{
    private const int MostInLoad = 200;

    public static StationStep Take(StationSession session, Scan scan, StageNeeds? needs) =>
        scan switch
        {
            Scan.Part part => TakePart(session, part, needs),
            Scan.Lot lot => TakeLot(session, lot, needs),
            Scan.Instrument instrument => TakeInstrument(session, instrument, needs),
            Scan.Carrier => LookUp(session, scan),
            Scan.Position position => Choose(session, position.Name, needs)
                ?? StationDesk.Say(session, Severity.Refused, PromptTexts.IsNoEmptySlotHere(position.Name)),
            Scan.Number number => TakeNumber(session, number, needs),
            Scan.BadNumber bad => StationDesk.Say(session, Severity.Refused, bad.Problem),
            Scan.Bare bare => TakeBare(session, bare, needs),
            _ => StationDesk.PromptNext(session, needs),
        };

    private static StationStep TakePart(StationSession session, Scan.Part part, StageNeeds? needs)
    {
        if (part.Serial == session.Part && session.LoadParts.Count == 0)
            return StationDesk.PromptNext(session with { MakesWay = false }, needs);
        // A run goes on by itself; an attempt at the bench waits for its own parts, and a child scanned twice must not push it aside.
        var runsByItself = session.LoadId is not null && needs is { Slots.Count: 0 };
        if (session.AttemptId is { } attempt && !runsByItself)
        {
            if (needs is null)
                return StationDesk.PromptNext(session, needs);
            if (part.PartKind is null)
                return LookUp(session, part);
            return NextThing.SlotFor(session, needs, null, part.PartKind) is { } slot
                ? Fitted(session, slot, new(attempt, slot.Position, part.Serial, null), part.Serial)
                : NoSlot(session, needs, NextThing.WithArticle(part.PartKind), PromptTexts.ToTurnToItScanClearFirst(part.Serial));
        }
        // A row goes through one stage part by part, then all of it into one load: a part just ended here is no beginning of a run.
        var beginsARun = !session.MakesWay && needs is { MayRunAsLoad: true, Gate: GateSign.Open, IsUnderWay: false };
        if (session.LoadParts.Count > 0 || beginsARun)
            return Collect(session, part.Serial);

        return StationDesk.Order(
            session.WithoutPart() with
            {
                Part = part.Serial,
            },
            new StationCommand.ShowPart(part.Serial),
            Severity.Wait,
            PromptTexts.LookingAt(part.Serial)
        );
    }

    private static StationStep Collect(StationSession session, string serial)
    {
        IReadOnlyList<string> before = session.LoadParts.Count > 0 || session.Part is null ? session.LoadParts : [session.Part];
        if (before.Contains(serial))
            return StationDesk.Say(
                session,
                Severity.Ok,
                PromptTexts.IsCollectedAlreadyInAll(serial, before.Count),
                string.Join(", ", before)
            );
        if (before.Count >= MostInLoad)
            return StationDesk.Say(session, Severity.Refused, PromptTexts.PartsAreEnoughForOneRun(MostInLoad));

        var collecting = session with { LoadParts = [.. before, serial] };
        return new(
            collecting,
            NextThing.Collected(collecting),
            new StationCommand.AddToLoad(serial, session.StageCode, session.Repeats is not null)
        );
    }

    private static StationStep TakeLot(StationSession session, Scan.Lot lot, StageNeeds? needs)
    {
        if (session.Part is null)
            return StationDesk.Say(session, Severity.Refused, PromptTexts.ScanThePartFirst);
        if (needs is null)
            return StationDesk.PromptNext(session, needs);
        if (session.AttemptId is not { } attempt)
            return NotStarted(session, needs);
        if (lot.LotKind is null)
            return LookUp(session, lot);
        return NextThing.SlotFor(session, needs, lot.LotKind, null) is { } slot
            ? Fitted(session, slot, new(attempt, slot.Position, null, lot.Code), PromptTexts.TheLot(lot.Code))
            : NoSlot(session, needs, NextThing.WithArticle(PromptTexts.LotOfKind(lot.LotKind)), null);
    }

    private static StationStep Fitted(StationSession session, EmptySlot slot, StationCommand.Fit command, string what) =>
        StationDesk.Order(session.WithoutChoice(), command, Severity.Ok, $"{slot.Label}: {what}.");

    private static StationStep NoSlot(StationSession session, StageNeeds needs, string what, string? remedy)
    {
        var chosen = NextThing.Slot(needs, session.ChosenPosition);
        var line = chosen is null
            ? PromptTexts.NoEmptySlotHereTakes(what)
            : PromptTexts.SlotTakesSomethingElse(chosen.Label, NextThing.WithArticle(chosen.Takes), what);
        var empty =
            needs.Slots.Count == 0
                ? PromptTexts.NoSlotIsEmpty
                : PromptTexts.EmptySlots(string.Join("; ", needs.Slots.Select(slot => $"{slot.Label} ({slot.Takes})")));
        return StationDesk.Say(session, Severity.Refused, line, remedy is null ? empty : $"{remedy} {empty}");
    }

    private static StationStep TakeInstrument(StationSession session, Scan.Instrument instrument, StageNeeds? needs)
    {
        if (session.AttemptId is not null)
            return StationDesk.Say(
                session,
                Severity.Refused,
                PromptTexts.InstrumentsAreNamedWhenAStageStarts,
                PromptTexts.AbandonAndStartAgain
            );
        if (instrument.InstrumentKind is not { } kind)
            return LookUp(session, instrument);

        var bench = session with
        {
            Instruments = [.. session.Instruments.Where(other => !NextThing.Same(other.Kind, kind)), new(instrument.Code, kind)],
        };
        var next = NextThing.Of(bench, needs);
        return StationDesk.Order(
            bench,
            new StationCommand.AddInstrument(instrument.Code),
            next.Severity,
            next.Line,
            $"{kind}: {instrument.Code}."
        );
    }

    private static StationStep TakeNumber(StationSession session, Scan.Number number, StageNeeds? needs)
    {
        if (session.Part is null)
            return StationDesk.Say(session, Severity.Refused, PromptTexts.NumberBelongsToAPart);
        if (needs is null)
            return StationDesk.PromptNext(session, needs);
        if (session.AttemptId is not { } attempt)
            return NotStarted(session, needs);
        if (NextThing.CharacteristicFor(session, needs) is not { } characteristic)
            return StationDesk.Say(
                session,
                Severity.Refused,
                PromptTexts.NoValueIsMissingHere,
                PromptTexts.OrCorrectAValue(NextThing.InAttempt(session, needs))
            );

        var conformity = characteristic.Judge(number.Value.Value);
        var judged = (characteristic, conformity) switch
        {
            ({ Lower: null, Upper: null }, _) => PromptTexts.JudgedByNothing,
            (_, Conformity.Met) => PromptTexts.InsideLimits(characteristic.Limits),
            (_, Conformity.Conditional) => PromptTexts.InsideButTooNearToTheLimit(characteristic.Limits),
            _ => PromptTexts.OutsideLimits(characteristic.Limits),
        };
        return StationDesk.Order(
            session.WithoutChoice(),
            new StationCommand.RecordReading(attempt, characteristic.Name, number.Value),
            conformity == Conformity.Met ? Severity.Ok : Severity.Outside,
            $"{characteristic.Label} {number.Value.Digits} {characteristic.Symbol}".TrimEnd() + $": {judged}."
        );
    }

    private static StationStep TakeBare(StationSession session, Scan.Bare bare, StageNeeds? needs)
    {
        if (Choose(session, bare.Text, needs) is { } chosen)
            return chosen;
        return CodeText.TryRead(bare.Text, PromptTexts.ACode, out var code, out var problem)
            ? LookUp(session, new Scan.Bare(code))
            : StationDesk.Say(session, Severity.Refused, PromptTexts.NeitherACodeNorANumber, problem);
    }

    private static StationStep? Choose(StationSession session, string name, StageNeeds? needs)
    {
        if (needs is null || !needs.IsUnderWay)
            return null;
        if (NextThing.Slot(needs, name) is { } slot)
            return StationDesk.PromptNext(session with { ChosenPosition = slot.Position, ChosenCharacteristic = null }, needs);
        return NextThing.Characteristic(needs, name) is { } characteristic
            ? StationDesk.PromptNext(session with { ChosenCharacteristic = characteristic.Name, ChosenPosition = null }, needs)
            : null;
    }

    private static StationStep NotStarted(StationSession session, StageNeeds needs) =>
        needs.Gate == GateSign.Open
            ? StationDesk.Say(session, Severity.Refused, PromptTexts.StageIsNotStartedScanStart, NextThing.Of(session, needs).Line)
            : StationDesk.PromptNext(session, needs);

    private static StationStep LookUp(StationSession session, Scan what) =>
        StationDesk.Order(session, new StationCommand.LookUp(what), Severity.Wait, PromptTexts.LookingItUp);
}
