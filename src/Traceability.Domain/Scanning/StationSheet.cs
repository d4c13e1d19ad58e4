namespace Traceability.Domain.Scanning;

/// <summary>The lines of the action sheet, for a person who is signed in.</summary>
internal static class StationSheet
{
    public static StationStep Take(StationSession session, StationAction action, StageNeeds? needs) => action switch
    {
        StationAction.Start => Start(session, needs, asLoad: session.LoadParts.Count > 0),
        StationAction.LoadStart => Start(session, needs, asLoad: true),
        StationAction.Done or StationAction.LoadClose => Close(session, needs, action),
        StationAction.Again => Again(session, needs),
        StationAction.Abandon => Abandon(session),
        StationAction.Next => Turn(session, needs, +1),
        StationAction.Back => Turn(session, needs, -1),
        StationAction.Fit => TurnToSlot(session, needs),
        StationAction.No => StationDesk.SayNext(session.WithoutChoice(), needs),
        StationAction.Correct => StationCorrection.Begin(session, needs),
        StationAction.Mistyped => StationDesk.Say(session, Severity.Refused, "MISTYPED is the reason for a correction: scan CORRECT first."),
        StationAction.Clear => Clear(session),
        StationAction.SignOut => SignOut(session),
        StationAction.Undo => StationDesk.Say(session, Severity.Refused, "Nothing is undone: facts are never deleted.",
            "CORRECT puts a value right that was just taken; later it is corrected on the part's page, with a reason; a wrong fitting is removed there; ABANDON gives the whole attempt up."),
        _ => Help(session, needs),
    };

    private static StationStep Start(StationSession session, StageNeeds? needs, bool asLoad)
    {
        if (session is { Part: null, LoadParts: [var first, ..] }) return Start(session with { Part = first }, null, asLoad);
        if (session.Part is not { } part) return StationDesk.Say(session, Severity.Refused, "Scan a part first.");
        if (needs is null) return StationDesk.Order(session, new StationCommand.ShowPart(part), Severity.Wait, $"Looking at {part}; then scan START again.");
        if (session.AttemptId is not null) return StationDesk.Say(session, Severity.Refused, "It is started already.", NextThing.InAttempt(session, needs));
        if (asLoad && !needs.MayRunAsLoad) return StationDesk.Say(session, Severity.Refused, $"{needs.StageTitle} is done part by part.");
        if (needs.Gate != GateSign.Open || session.Station is null || NextThing.MissingInstruments(session, needs).Count > 0)
        {
            var why = NextThing.Of(session with { LoadParts = [] }, needs);
            return new(session, why with { Severity = why.Severity == Severity.Wait ? Severity.Wait : Severity.Refused }, new StationCommand.Nothing());
        }

        string[] instruments = [.. session.Instruments
            .Where(instrument => needs.InstrumentKinds.Any(kind => NextThing.Same(kind, instrument.Kind))).Select(instrument => instrument.Code)];
        IReadOnlyList<string> parts = session.LoadParts.Count > 0 ? session.LoadParts : [part];
        return asLoad
            ? StationDesk.Order(session, new StationCommand.StartLoad(needs.StageCode, session.Station, instruments, parts),
                Severity.Wait, $"Starting {needs.StageTitle} for {parts.Count} parts.")
            : StationDesk.Order(session, new StationCommand.OpenAttempt(part, needs.StageCode, session.Station, instruments),
                Severity.Wait, $"Starting {needs.StageTitle} on {part}.");
    }

    private static StationStep Again(StationSession session, StageNeeds? needs)
    {
        if (session.Part is not { } part) return StationDesk.Say(session, Severity.Refused, "Scan a part first.");
        if (session.AttemptId is not null) return StationDesk.Say(session, Severity.Refused, "It is started already.", needs is null ? null : NextThing.InAttempt(session, needs));
        if (needs is null) return StationDesk.Order(session, new StationCommand.ShowPart(part), Severity.Wait, $"Looking at {part}; then scan AGAIN again.");
        return needs.Repeatable is { } stage
            ? StationDesk.Order(session with { Repeats = stage.Code }, new StationCommand.ShowPart(part), Severity.Wait, $"{stage.Title} once more.")
            : StationDesk.Say(session, Severity.Refused, $"{part} has passed no stage that may be run again now.", "A stage may be run again where its route says so, and only before the next one is started.");
    }

    private static StationStep Close(StationSession session, StageNeeds? needs, StationAction action)
    {
        if (session.AttemptId is null && session.LoadId is null) return StationDesk.Say(session, Severity.Refused, "Nothing is started here that could be closed.");
        if (action == StationAction.LoadClose && session.LoadId is null) return StationDesk.Say(session, Severity.Refused, "This part is in no load: scan DONE.");
        if (needs is not null && NextThing.MissingToClose(needs) is { Count: > 0 } missing)
            return StationDesk.Say(session, Severity.Refused, $"Not yet. {NextThing.InAttempt(session, needs)}", "Missing: " + string.Join(", ", missing) + ".");
        return session.LoadId is { } load
            ? StationDesk.Order(session, new StationCommand.CloseLoad(load), Severity.Wait, "Closing the run for all its parts.")
            : StationDesk.Order(session, new StationCommand.CloseAttempt(session.AttemptId!.Value), Severity.Wait, "Closing and judging.");
    }

    private static StationStep Abandon(StationSession session) => session.AttemptId is null
        ? StationDesk.Say(session, Severity.Refused, "Nothing is started here that could be given up.")
        : StationDesk.Say(session with { Asks = Question.AbandonReason }, Severity.Ask, "Type in words why the attempt is given up, or scan NO.");

    private static StationStep Turn(StationSession session, StageNeeds? needs, int by)
    {
        if (needs is null || !needs.IsUnderWay) return StationDesk.SayNext(session, needs);
        StationSession[] turns =
        [
            .. needs.Slots.Select(slot => session with { ChosenPosition = slot.Position, ChosenCharacteristic = null }),
            .. needs.Characteristics.Select(missing => session with { ChosenPosition = null, ChosenCharacteristic = missing.Name }),
        ];
        if (turns.Length == 0) return StationDesk.SayNext(session.WithoutChoice(), needs);
        var now = Array.FindIndex(turns, turn =>
            turn.ChosenPosition == session.ChosenPosition && turn.ChosenCharacteristic == session.ChosenCharacteristic);
        return StationDesk.SayNext(turns[(Math.Max(now, 0) + by + turns.Length) % turns.Length], needs);
    }

    private static StationStep TurnToSlot(StationSession session, StageNeeds? needs) => needs switch
    {
        { IsUnderWay: true, Slots: [var first, ..] } =>
            StationDesk.SayNext(session with { ChosenPosition = first.Position, ChosenCharacteristic = null }, needs),
        { IsUnderWay: true } => StationDesk.Say(session, Severity.Refused, "No slot is empty here.", NextThing.InAttempt(session, needs)),
        _ => StationDesk.SayNext(session, needs),
    };

    private static StationStep Clear(StationSession session)
    {
        var isEmpty = session.Part is null && session.LoadParts.Count == 0;
        var cleared = session.WithoutPart() with { LoadParts = [], Instruments = isEmpty ? [] : session.Instruments };
        var aside = session.LoadParts.Count > 0 ? string.Join(", ", session.LoadParts) : session.Part;
        return StationDesk.Say(cleared, Severity.Ask, "The bench is clear. Scan a part, its jig or its tray.",
            aside is null ? "The instruments are put aside too." : $"Put aside: {aside}." + (session.AttemptId is null ? "" : " What was started stays open."));
    }

    private static StationStep SignOut(StationSession session) => StationDesk.Order(
        session.WithoutPart() with { Badge = null, Name = null, Instruments = [] }, new StationCommand.SignOut(session.Badge ?? ""), Severity.Ok, "Signed out. Scan a badge.",
        session.LoadParts.Count > 0 ? $"{session.LoadParts.Count} collected parts stay on the bench." : null);

    private static StationStep Help(StationSession session, StageNeeds? needs) => StationDesk.Say(session, Severity.Ask, NextThing.Of(session, needs).Line,
        (session.Part, session.AttemptId) switch
        {
            (null, _) => "Now: a part, jig or tray; a station; instruments; OUT.",
            (_, null) => "Now: instruments; START; more parts where the stage runs as a load (LOAD-START); CLEAR; OUT.",
            _ => "Now: parts and lots into slots; numbers; a slot's code, FIT, NEXT, BACK to choose; CORRECT for a wrong value; DONE or LOAD-CLOSE; ABANDON; CLEAR; OUT.",
        });
}
