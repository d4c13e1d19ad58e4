namespace Traceability.Domain.Scanning;

/// <summary>The lines of the action sheet, for a person who is signed in.</summary>
internal static class StationSheet
{
    public static StationStep Take(StationSession session, StationAction action, StageNeeds? needs) =>
        action switch
        {
            StationAction.Start => Start(session, needs, asLoad: session.LoadParts.Count > 0),
            StationAction.LoadStart => Start(session, needs, asLoad: true),
            StationAction.Done or StationAction.LoadClose => Close(session, needs, action),
            StationAction.Again => Again(session, needs),
            StationAction.Abandon => Abandon(session),
            StationAction.Next => Turn(session, needs, +1),
            StationAction.Back => Turn(session, needs, -1),
            StationAction.Fit => TurnToSlot(session, needs),
            StationAction.No => StationDesk.PromptNext(session.WithoutChoice(), needs),
            StationAction.Correct => StationCorrection.Begin(session, needs),
            StationAction.Mistyped => StationDesk.Say(session, Severity.Refused, PromptTexts.MistypedIsTheReasonForACorrection),
            StationAction.Clear => Clear(session),
            StationAction.SignOut => SignOut(session),
            StationAction.Undo => StationDesk.Say(
                session,
                Severity.Refused,
                PromptTexts.NothingIsUndoneFactsAreNeverDeleted,
                PromptTexts.WhatCorrectsWhat
            ),
            _ => Help(session, needs),
        };

    private static StationStep Start(StationSession session, StageNeeds? needs, bool asLoad)
    {
        session = session with { MakesWay = false };
        if (session is { Part: null, LoadParts: [var first, ..] })
            return Start(session with { Part = first }, null, asLoad);
        if (session.Part is not { } part)
            return StationDesk.Say(session, Severity.Refused, PromptTexts.ScanAPartFirst);
        if (needs is null)
            return StationDesk.Order(
                session,
                new StationCommand.ShowPart(part),
                Severity.Wait,
                PromptTexts.LookingAtThenScanStartAgain(part)
            );
        if (session.AttemptId is not null)
            return StationDesk.Say(session, Severity.Refused, PromptTexts.ItIsStartedAlready, NextThing.InAttempt(session, needs));
        if (asLoad && !needs.MayRunAsLoad)
            return StationDesk.Say(session, Severity.Refused, PromptTexts.IsDonePartByPart(needs.StageTitle));
        if (needs.Gate != GateSign.Open || session.Station is null || NextThing.MissingInstruments(session, needs).Count > 0)
        {
            var why = NextThing.Of(session with { LoadParts = [] }, needs);
            return new(
                session,
                why with
                {
                    Severity = why.Severity == Severity.Wait ? Severity.Wait : Severity.Refused,
                },
                new StationCommand.Nothing()
            );
        }

        string[] instruments =
        [
            .. session
                .Instruments.Where(instrument => needs.InstrumentKinds.Any(kind => NextThing.Same(kind, instrument.Kind)))
                .Select(instrument => instrument.Code),
        ];
        IReadOnlyList<string> parts = session.LoadParts.Count > 0 ? session.LoadParts : [part];
        return asLoad
            ? StationDesk.Order(
                session,
                new StationCommand.StartLoad(needs.StageCode, session.Station, instruments, parts),
                Severity.Wait,
                PromptTexts.StartingForParts(needs.StageTitle, parts.Count)
            )
            : StationDesk.Order(
                session,
                new StationCommand.OpenAttempt(part, needs.StageCode, session.Station, instruments),
                Severity.Wait,
                PromptTexts.StartingOn(needs.StageTitle, part)
            );
    }

    private static StationStep Again(StationSession session, StageNeeds? needs)
    {
        if (session.Part is not { } part)
            return StationDesk.Say(session, Severity.Refused, PromptTexts.ScanAPartFirst);
        if (session.AttemptId is not null)
            return StationDesk.Say(
                session,
                Severity.Refused,
                PromptTexts.ItIsStartedAlready,
                needs is null ? null : NextThing.InAttempt(session, needs)
            );
        if (needs is null)
            return StationDesk.Order(
                session,
                new StationCommand.ShowPart(part),
                Severity.Wait,
                PromptTexts.LookingAtThenScanAgainAgain(part)
            );
        return needs.Repeatable is { } stage
            ? StationDesk.Order(
                session with
                {
                    Repeats = stage.Code,
                    MakesWay = false,
                },
                new StationCommand.ShowPart(part),
                Severity.Wait,
                PromptTexts.RunOnceMore(stage.Title)
            )
            : StationDesk.Say(session, Severity.Refused, PromptTexts.HasNoStageToRunAgain(part), PromptTexts.WhenAStageMayBeRunAgain);
    }

    private static StationStep Close(StationSession session, StageNeeds? needs, StationAction action)
    {
        if (session.AttemptId is null && (action == StationAction.Done || session.LoadId is null))
            return StationDesk.Say(session, Severity.Refused, PromptTexts.NothingIsStartedToClose);
        if (action == StationAction.LoadClose && session.LoadId is null)
            return StationDesk.Say(session, Severity.Refused, PromptTexts.ThisPartIsInNoLoadScan);
        if (needs is not null && NextThing.MissingToClose(needs) is { Count: > 0 } missing)
            return StationDesk.Say(
                session,
                Severity.Refused,
                PromptTexts.NotYet(NextThing.InAttempt(session, needs)),
                PromptTexts.StillMissing(string.Join(", ", missing))
            );
        // DONE takes this one part out of its run; LOAD-CLOSE ends the run for all that are still in it.
        return action == StationAction.LoadClose && session.LoadId is { } load
            ? StationDesk.Order(session, new StationCommand.CloseLoad(load), Severity.Wait, PromptTexts.ClosingTheRunForAllItsParts)
            : StationDesk.Order(
                session,
                new StationCommand.CloseAttempt(session.AttemptId!.Value),
                Severity.Wait,
                PromptTexts.ClosingAndJudging
            );
    }

    private static StationStep Abandon(StationSession session) =>
        session.AttemptId is null
            ? StationDesk.Say(session, Severity.Refused, PromptTexts.NothingIsStartedToAbandon)
            : StationDesk.Say(session with { Asks = Question.AbandonReason }, Severity.Ask, PromptTexts.TypeInWordsWhyTheAttempt);

    private static StationStep Turn(StationSession session, StageNeeds? needs, int by)
    {
        if (needs is null || !needs.IsUnderWay)
            return StationDesk.PromptNext(session, needs);
        StationSession[] turns =
        [
            .. needs.Slots.Select(slot => session with { ChosenPosition = slot.Position, ChosenCharacteristic = null }),
            .. needs.Characteristics.Select(missing => session with { ChosenPosition = null, ChosenCharacteristic = missing.Name }),
        ];
        if (turns.Length == 0)
            return StationDesk.PromptNext(session.WithoutChoice(), needs);
        var now = Array.FindIndex(
            turns,
            turn => turn.ChosenPosition == session.ChosenPosition && turn.ChosenCharacteristic == session.ChosenCharacteristic
        );
        return StationDesk.PromptNext(turns[(Math.Max(now, 0) + by + turns.Length) % turns.Length], needs);
    }

    private static StationStep TurnToSlot(StationSession session, StageNeeds? needs) =>
        needs switch
        {
            { IsUnderWay: true, Slots: [var first, ..] } => StationDesk.PromptNext(
                session with
                {
                    ChosenPosition = first.Position,
                    ChosenCharacteristic = null,
                },
                needs
            ),
            { IsUnderWay: true } => StationDesk.Say(
                session,
                Severity.Refused,
                PromptTexts.NoSlotIsEmptyHere,
                NextThing.InAttempt(session, needs)
            ),
            _ => StationDesk.PromptNext(session, needs),
        };

    private static StationStep Clear(StationSession session)
    {
        var isEmpty = session.Part is null && session.LoadParts.Count == 0;
        var cleared = session.WithoutPart() with { LoadParts = [], Instruments = isEmpty ? [] : session.Instruments };
        var aside = session.LoadParts.Count > 0 ? string.Join(", ", session.LoadParts) : session.Part;
        return StationDesk.Say(
            cleared,
            Severity.Ask,
            PromptTexts.BenchIsClear,
            aside is null ? PromptTexts.InstrumentsArePutAsideToo
                : session.AttemptId is null ? PromptTexts.PutAside(aside)
                : PromptTexts.PutAsideWhatWasStartedStaysOpen(aside)
        );
    }

    private static StationStep SignOut(StationSession session) =>
        StationDesk.Order(
            session.WithoutPart() with
            {
                Badge = null,
                Name = null,
                Instruments = [],
            },
            new StationCommand.SignOut(session.Badge ?? ""),
            Severity.Ok,
            PromptTexts.SignedOutScanABadge,
            session.LoadParts.Count > 0 ? PromptTexts.CollectedPartsStayOnTheBench(session.LoadParts.Count) : null
        );

    private static StationStep Help(StationSession session, StageNeeds? needs) =>
        StationDesk.Say(
            session,
            Severity.Ask,
            NextThing.Of(session, needs).Line,
            (session.Part, session.AttemptId) switch
            {
                (null, _) => PromptTexts.HelpAtAnEmptyBench,
                (_, null) => PromptTexts.HelpBeforeTheStart,
                _ => PromptTexts.HelpInAnAttempt,
            }
        );
}
