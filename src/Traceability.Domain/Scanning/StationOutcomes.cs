namespace Traceability.Domain.Scanning;

/// <summary>What the station says and remembers when a command has come to its end.</summary>
internal static class StationOutcomes
{
    public static (StationSession Session, Prompt Prompt) Take(StationSession session, ScanOutcome outcome, StageNeeds? needs) =>
        outcome switch
        {
            ScanOutcome.Identified person => SignIn(session, person, needs),
            ScanOutcome.NotIdentified refused => (session, new(Severity.Refused, refused.Because, PromptTexts.TypeThePinAgainOrScanNo)),
            ScanOutcome.Unknown when session.Badge is null || session.Asks == Question.Pin => (
                session,
                new(Severity.Refused, PromptTexts.ScanYourBadgeFirst)
            ),
            ScanOutcome.Unknown unknown => (
                session,
                new(Severity.Refused, PromptTexts.IsNotKnownHere(unknown.Text), PromptTexts.CheckTheLabelOrRegisterItFirst)
            ),
            ScanOutcome.Kept => Kept(session, needs),
            ScanOutcome.Opened opened => Next(
                session with
                {
                    AttemptId = opened.AttemptId,
                },
                needs is null ? null : needs with { AttemptId = opened.AttemptId }
            ),
            ScanOutcome.LoadStarted started => LoadStarted(session, started, needs),
            ScanOutcome.Closed closed => Closed(session, closed, needs),
            ScanOutcome.Abandoned => (Ended(session), new(Severity.Ok, PromptTexts.AttemptIsAbandoned)),
            ScanOutcome.InstrumentRefused refused => (
                session with
                {
                    Instruments = [.. session.Instruments.Where(instrument => instrument.Code != refused.Code)],
                },
                new(Severity.Refused, refused.Because, PromptTexts.WasPutAsideScanAnother(refused.Code))
            ),
            ScanOutcome.LoadPartRefused refused => PutAside(session, refused),
            ScanOutcome.Refused refused => (session, new(Severity.Refused, refused.Because, refused.Detail)),
            _ => Next(session, needs),
        };

    private static (StationSession, Prompt) Next(StationSession session, StageNeeds? needs)
    {
        var synced = session.InStepWith(needs);
        return (synced, NextThing.Of(synced, needs));
    }

    private static (StationSession, Prompt) Kept(StationSession session, StageNeeds? needs)
    {
        var said = session.Last ?? new(Severity.Ok, "");
        return (
            session,
            needs is { IsUnderWay: true }
                ? said with
                {
                    Line = PromptTexts.KeptAndNext(said.Line, NextThing.InAttempt(session, needs)),
                }
                : said
        );
    }

    private static (StationSession, Prompt) SignIn(StationSession session, ScanOutcome.Identified person, StageNeeds? needs)
    {
        var isSame = session.Badge is null || session.Badge == person.Badge;
        var signedIn = (isSame ? session : session.WithoutPart()) with
        {
            Badge = person.Badge,
            Name = person.Name,
            BadgeToProve = null,
            Asks = Question.None,
            Correcting = null,
        };
        var next =
            signedIn.Station is null && signedIn.Part is null
                ? new(Severity.Ask, PromptTexts.ScanTheStationYouAreAtThen)
                : NextThing.Of(signedIn, needs);
        return (signedIn, next with { Detail = PromptTexts.SignedIn(person.Name, next.Detail).TrimEnd() });
    }

    private static (StationSession, Prompt) LoadStarted(StationSession session, ScanOutcome.LoadStarted started, StageNeeds? needs)
    {
        var count = Math.Max(1, session.LoadParts.Count);
        var running = session with { LoadParts = [], LoadId = started.LoadId, AttemptId = needs?.AttemptId ?? session.AttemptId };
        var line = count == 1 ? PromptTexts.RunIsStartedForOnePart : PromptTexts.RunIsStartedForParts(count);
        return (
            running,
            new(Severity.Ok, needs is { IsUnderWay: true } ? PromptTexts.KeptAndNext(line, NextThing.InAttempt(running, needs)) : line)
        );
    }

    private static (StationSession, Prompt) Closed(StationSession session, ScanOutcome.Closed closed, StageNeeds? needs)
    {
        var ended = Ended(session);
        var next = NextThing.Of(ended, needs is { IsUnderWay: false } ? needs : null);
        return (
            ended,
            new(
                closed.Passed ? Severity.Ok : Severity.Outside,
                closed.Verdict,
                needs is null ? PromptTexts.ScanTheNextPart : PromptTexts.WhereAndNext(next.Detail ?? "", next.Line)
            )
        );
    }

    private static (StationSession, Prompt) PutAside(StationSession session, ScanOutcome.LoadPartRefused refused)
    {
        var kept = session with { LoadParts = [.. session.LoadParts.Where(serial => serial != refused.Serial)] };
        return (
            kept,
            new(
                Severity.Refused,
                refused.Because,
                PromptTexts.WasPutAsideCollected(refused.Serial, kept.LoadParts.Count, string.Join(", ", kept.LoadParts))
            )
        );
    }

    private static StationSession Ended(StationSession session) =>
        session.WithoutChoice() with
        {
            AttemptId = null,
            LoadId = null,
            StageCode = null,
            Repeats = null,
            Asks = Question.None,
            MakesWay = true,
        };
}
