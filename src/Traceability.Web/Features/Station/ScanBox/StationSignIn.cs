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

/// <summary>Who works at this screen. The session cookie says it; what the screen remembers follows.</summary>
public sealed class StationSignIn(
    IHttpContextAccessor accessor,
    WorkshopContext db,
    SignIn use,
    SessionCookie cookie,
    Say say,
    IStringLocalizer<Texts> shared,
    IStringLocalizer<StationTexts> texts
)
{
    private readonly HttpContext http = accessor.HttpContext!;

    /// <summary>The person, also one who has signed in with this very scan.</summary>
    public Actor? Actor { get; private set; } = SessionAuthentication.ActorOf(accessor.HttpContext!);

    /// <summary>Brings what the screen remembers into step with the cookie: whose session has ended must prove themselves again.</summary>
    public StationSession InStep(StationSession session, StageNeeds? needs) =>
        (Actor, session.Badge) switch
        {
            (null, null) => session,
            (null, { } badge) => session.Lapsed() with
            {
                Last = new(Severity.Ask, texts["Station.PinAgain"], texts["Station.PinAgainDetail", session.Name ?? badge]),
            },
            ({ } actor, var badge) when actor.Badge == badge => session,
            ({ } actor, _) => StationDesk.After(session, new Outcome.Identified(actor.Badge, actor.Name), needs).Session,
        };

    public async Task<Outcome> IdentifyAsync(string badge, Pin pin)
    {
        var outcome = await use.RunAsync(new(badge, pin.Reveal()), http.RequestAborted);
        if (outcome.Session is not { } session)
        {
            return new Outcome.NotIdentified(
                outcome.Throttled is { } throttled ? shared[throttled.PageKey(), say.ClockText(throttled.Until)] : shared["SignIn.Wrong"]
            );
        }

        await cookie.ReplaceAsync(http, session);
        var id = await db.Set<Person>().Where(p => p.Badge == session.Person.Badge).Select(p => p.Id).SingleAsync(http.RequestAborted);
        Actor = await ActorQuery.FindAsync(db, id, http.RequestAborted);
        return new Outcome.Identified(session.Person.Badge, session.Person.Name);
    }

    public async Task<Outcome?> SignOutAsync()
    {
        await cookie.EndAsync(http);
        Actor = null;
        return null;
    }
}
