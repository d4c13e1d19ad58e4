namespace Traceability.Domain.Scanning;

/// <summary>What is missing and what comes next, in words.</summary>
internal static class NextThing
{
    /// <summary>The slot that a scan of this kind would fill: the chosen one, or the first that takes it.</summary>
    public static EmptySlot? SlotFor(StationSession session, StageNeeds needs, string? lotKind, string? partKind) =>
        session.ChosenPosition is { } chosen && Slot(needs, chosen) is { } slot
            ? Takes(slot, lotKind, partKind)
                ? slot
                : null
            : needs.Slots.FirstOrDefault(candidate => Takes(candidate, lotKind, partKind));

    /// <summary>
    /// The characteristic that a number would fill: the chosen one, or the first missing, those that the stage can be closed without last.
    /// </summary>
    public static MissingCharacteristic? CharacteristicFor(StationSession session, StageNeeds needs) =>
        Characteristic(needs, session.ChosenCharacteristic)
        ?? FirstRequired(needs)
        ?? (needs.Characteristics is [var first, ..] ? first : null);

    private static MissingCharacteristic? FirstRequired(StageNeeds needs) =>
        needs.Characteristics.FirstOrDefault(characteristic => characteristic.IsRequired);

    public static EmptySlot? Slot(StageNeeds needs, string? position) => needs.Slots.FirstOrDefault(slot => Same(slot.Position, position));

    public static MissingCharacteristic? Characteristic(StageNeeds needs, string? name) =>
        needs.Characteristics.FirstOrDefault(characteristic => Same(characteristic.Name, name));

    public static IReadOnlyList<string> MissingInstruments(StationSession session, StageNeeds needs) =>
        [.. needs.InstrumentKinds.Where(kind => !session.Instruments.Any(instrument => Same(instrument.Kind, kind)))];

    /// <summary>What still stands between an open attempt and its end.</summary>
    public static IReadOnlyList<string> MissingToClose(StageNeeds needs) =>
        [
            .. needs.Slots.Where(slot => slot.IsRequired).Select(slot => slot.Label),
            .. needs.Characteristics.Where(characteristic => characteristic.IsRequired).Select(characteristic => characteristic.Label),
            .. needs.Evidence,
        ];

    /// <summary>The prompt for the part on the bench as it now stands.</summary>
    public static Prompt Of(StationSession session, StageNeeds? needs)
    {
        if (session.Badge is null)
            return new(Severity.Ask, PromptTexts.ScanYourBadge);
        if (session.LoadParts.Count > 0)
            return Collected(session);
        if (session.Part is null)
            return new(Severity.Ask, PromptTexts.ScanAPartItsJig);
        if (needs is null)
            return new(Severity.Wait, PromptTexts.LookingAt(session.Part));

        var where = Where(session, needs);
        if (needs.IsUnderWay)
        {
            var waits = MissingToClose(needs).Count == 0 && needs.Bar is { Sign: GateSign.Waiting };
            return new(waits ? Severity.Wait : Severity.Ask, InAttempt(session, needs), where);
        }

        if (needs.Gate != GateSign.Open)
            return new(needs.Gate == GateSign.Waiting ? Severity.Wait : Severity.Refused, needs.GateWords, where);
        if (session.Station is null)
            return new(Severity.Ask, PromptTexts.ScanTheStationYouAreAt, where);
        if (MissingInstruments(session, needs) is { Count: > 0 } missing)
            return new(Severity.Ask, PromptTexts.ScanMissing(string.Join(PromptTexts.JoinedByAnd, missing)), where);
        var start =
            !needs.MayRunAsLoad ? PromptTexts.ScanStart
            : session.MakesWay ? PromptTexts.ScanStartOrTheNextPart
            : PromptTexts.ScanStartOrMorePartsFor;
        return new(Severity.Ok, start, $"{where}. {needs.GateWords}");
    }

    private static string Where(StationSession session, StageNeeds needs) =>
        (session.Repeats, needs.Repeatable) switch
        {
            ({ } code, { } stage) when stage.Code == code => PromptTexts.PartAtStageOnceMore(needs.Part, needs.StageTitle),
            (null, { } stage) when !needs.IsUnderWay => PromptTexts.PartAtStageMayRunAgain(needs.Part, needs.StageTitle, stage.Title),
            _ => $"{needs.Part}: {needs.StageTitle}",
        };

    public static Prompt Collected(StationSession session) =>
        new(Severity.Ok, PromptTexts.Collected(session.LoadParts.Count), string.Join(", ", session.LoadParts));

    /// <summary>The one thing to do next in an open attempt.</summary>
    public static string InAttempt(StationSession session, StageNeeds needs)
    {
        if (Slot(needs, session.ChosenPosition) is { } slot)
            return Asked(slot);
        if (Characteristic(needs, session.ChosenCharacteristic) is { } chosen)
            return Asked(chosen);
        if (needs.Slots.FirstOrDefault(candidate => candidate.IsRequired) is { } first)
            return Asked(first);
        if (FirstRequired(needs) is { } characteristic)
            return Asked(characteristic);
        return needs.Evidence is [var evidence, ..] ? PromptTexts.SendTheFile(evidence) : AtTheEnd(needs);
    }

    // Nothing is missing. That closing is the next thing is said only where it would be accepted, and not before a look at a value that
    // may be mistyped.
    private static string AtTheEnd(StageNeeds needs)
    {
        var close = (needs.LoadId is null ? StationAction.Done : StationAction.LoadClose).Word();
        if (needs.Bar is { } bar)
            return bar.Sign == GateSign.Waiting ? PromptTexts.NothingIsMissingButTime(bar.Words, close) : bar.Words;
        if (needs.Taken.FirstOrDefault(taken => !taken.IsMet) is { } outside)
            return PromptTexts.CorrectItOrCloseIt(outside.What.Label, close);
        var closing = needs.LoadId is null ? PromptTexts.NothingIsMissingScanDone : PromptTexts.NothingIsMissingInTheLoad;
        return needs.Characteristics is [var optional, ..] ? PromptTexts.AlsoPossible(closing, optional.Label, optional.Limits) : closing;
    }

    private static string Asked(EmptySlot slot) => PromptTexts.ScanForSlot(slot.Label, WithArticle(slot.Takes));

    private static string Asked(MissingCharacteristic characteristic) =>
        characteristic.Symbol.Length > 0
            ? PromptTexts.TypeTheValueIn(characteristic.Label, characteristic.Symbol, characteristic.Limits)
            : PromptTexts.TypeTheValue(characteristic.Label, characteristic.Limits);

    public static string WithArticle(string kind) =>
        kind is [('a' or 'e' or 'i' or 'o' or 'u'), ..] ? PromptTexts.AnKind(kind) : PromptTexts.AKind(kind);

    private static bool Takes(EmptySlot slot, string? lotKind, string? partKind) =>
        (lotKind is not null && Same(slot.LotKind, lotKind)) || (partKind is not null && Same(slot.PartKind, partKind));

    /// <summary>Codes and kinds are compared without regard to case.</summary>
    public static bool Same(string? one, string? other) => one is not null && string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
