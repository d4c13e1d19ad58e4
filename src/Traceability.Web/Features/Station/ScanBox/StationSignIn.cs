using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Scanning;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>Who works at this screen: the session cookie decides, and the state of the screen is brought into line with it.</summary>
public sealed class StationSignIn(
    IHttpContextAccessor accessor,
    WorkshopContext db,
    SignIn use,
    SessionCookie cookie,
    Display display,
    IStringLocalizer<Texts> shared,
    IStringLocalizer<StationTexts> texts
)
{
    private readonly HttpContext http = accessor.HttpContext!;

    /// <summary>The person who is signed in, from this scan on if the scan was the sign-in.</summary>
    public Actor? Actor { get; private set; } = SessionAuthentication.ActorOf(accessor.HttpContext!);

    /// <summary>Brings the station's session into line with the cookie: whose sign-in has ended must type the PIN again.</summary>
    public StationSession Reconcile(StationSession session, StageNeeds? needs) =>
        (Actor, session.Badge) switch
        {
            (null, null) => session,
            (null, { } badge) => session.Lapsed() with
            {
                Last = new(Severity.Ask, texts["Station.PinAgain"], texts["Station.PinAgainDetail", session.Name ?? badge]),
            },
            ({ } actor, var badge) when actor.Badge == badge => session,
            ({ } actor, _) => StationDesk.After(session, new ScanOutcome.Identified(actor.Badge, actor.Name), needs).Session,
        };

    public async Task<ScanOutcome> IdentifyAsync(string badge, Pin pin)
    {
        var outcome = await use.RunAsync(new(badge, pin.Reveal()), http.RequestAborted);
        if (outcome.Session is not { } session)
        {
            return new ScanOutcome.NotIdentified(
                outcome.Throttled is { } throttled ? shared[throttled.PageKey(), display.ClockText(throttled.Until)]
                : outcome.Deactivated is { } because ? AccessSentences.AccessWasEnded(because)
                : shared["SignIn.Wrong"]
            );
        }

        await cookie.ReplaceAsync(http, session);
        var id = await db.Set<Person>().Where(p => p.Badge == session.Person.Badge).Select(p => p.Id).SingleAsync(http.RequestAborted);
        Actor = await ActorQuery.FindAsync(db, id, http.RequestAborted) is { } known ? SessionAuthentication.AtWork(http, known) : null;
        return new ScanOutcome.Identified(session.Person.Badge, session.Person.Name);
    }

    public async Task<ScanOutcome?> SignOutAsync()
    {
        await cookie.EndAsync(http);
        Actor = null;
        return null;
    }
}
