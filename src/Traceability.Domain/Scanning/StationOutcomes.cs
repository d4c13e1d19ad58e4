namespace Traceability.Domain.Scanning;

/// <summary>What the station says and remembers when a command has come to its end.</summary>
internal static class StationOutcomes
{
    public static (StationSession Session, Prompt Prompt) Take(StationSession session, Outcome outcome, StageNeeds? needs) =>
        outcome switch
        {
            Outcome.Identified person => SignIn(session, person, needs),
            Outcome.NotIdentified refused => (session, new(Severity.Refused, refused.Because, PromptTexts.TypeThePinAgainOrScanNo)),
            Outcome.Unknown when session.Badge is null || session.Asks == Question.Pin => (
                session,
                new(Severity.Refused, PromptTexts.ScanYourBadgeFirst)
            ),
            Outcome.Unknown unknown => (
                session,
                new(Severity.Refused, PromptTexts.IsNotKnownHere(unknown.Text), PromptTexts.CheckTheLabelOrRegisterItFirst)
            ),
            Outcome.Kept => Kept(session, needs),
            Outcome.Opened opened => Next(
                session with
                {
                    AttemptId = opened.AttemptId,
                },
                needs is null ? null : needs with { AttemptId = opened.AttemptId }
            ),
            Outcome.LoadStarted started => LoadStarted(session, started, needs),
            Outcome.Closed closed => Closed(session, closed, needs),
            Outcome.Abandoned => (Ended(session), new(Severity.Ok, PromptTexts.AttemptIsGivenUp)),
            Outcome.InstrumentRefused refused => (
                session with
                {
                    Instruments = [.. session.Instruments.Where(instrument => instrument.Code != refused.Code)],
                },
                new(Severity.Refused, refused.Because, PromptTexts.WasPutAsideScanAnother(refused.Code))
            ),
            Outcome.LoadPartRefused refused => PutAside(session, refused),
            Outcome.Refused refused => (session, new(Severity.Refused, refused.Because, refused.Detail)),
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

    private static (StationSession, Prompt) SignIn(StationSession session, Outcome.Identified person, StageNeeds? needs)
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

    private static (StationSession, Prompt) LoadStarted(StationSession session, Outcome.LoadStarted started, StageNeeds? needs)
    {
        var count = Math.Max(1, session.LoadParts.Count);
        var running = session with { LoadParts = [], LoadId = started.LoadId, AttemptId = needs?.AttemptId ?? session.AttemptId };
        var line = count == 1 ? PromptTexts.RunIsStartedForOnePart : PromptTexts.RunIsStartedForParts(count);
        return (
            running,
            new(Severity.Ok, needs is { IsUnderWay: true } ? PromptTexts.KeptAndNext(line, NextThing.InAttempt(running, needs)) : line)
        );
    }

    private static (StationSession, Prompt) Closed(StationSession session, Outcome.Closed closed, StageNeeds? needs)
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

    private static (StationSession, Prompt) PutAside(StationSession session, Outcome.LoadPartRefused refused)
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
