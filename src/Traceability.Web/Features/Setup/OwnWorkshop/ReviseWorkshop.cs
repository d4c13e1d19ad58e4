using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Hosting;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>The lead says what the workshop is: a new revision of all of it but the logo. Certificates of before keep what held.</summary>
public sealed class ReviseWorkshop(WorkshopQuery query, WorkshopNotice notice, CurrentWorkshop current, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/workshop", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.Workshop, "reviseWorkshop", "Say what the workshop is: a revision of everything but the logo.");

    /// <summary>What the workshop says about itself, whole: what is left out is not said any more.</summary>
    /// <param name="Name" example="The Lower Mill Workshop">Its name, 1 to 120 characters on one line.</param>
    /// <param name="TimeZone" example="Europe/Berlin">Its time zone, by the name in the IANA database.</param>
    /// <param name="Language" example="en">The short name of the language that it works in.</param>
    /// <param name="CertificateSections">What certificates show to the customer.</param>
    /// <param name="Address" example="Mill Lane 4, Lower Mill">Where it is, in lines; at most 500 characters.</param>
    /// <param name="Contact" example="bench@workshop.example">How it is reached, in lines; at most 500 characters.</param>
    /// <param name="PublicUrl" example="https://workshop.example">
    /// The address by which its service is reached from outside; certificates carry it for good.
    /// </param>
    /// <param name="WarrantyTerms" example="Two years on material and work.">
    /// What certificates say of warranty; at most 2000 characters.
    /// </param>
    /// <param name="NamesOnCertificates" example="initials">How people are called on certificates.</param>
    /// <param name="SingleHanded" example="false">Whether one person may do what two should, with a second sign-in and a reason.</param>
    /// <param name="Reason" example="moved house">Why it is changed; needed to begin single-handed work.</param>
    /// <param name="BasedOn" example="3">
    /// The revision that this was made from, 0 for none: refused when another was made since. Not asked when it is left out.
    /// </param>
    public sealed record Input(
        string Name,
        string TimeZone,
        string Language,
        CertificateSections CertificateSections,
        string? Address = null,
        string? Contact = null,
        string? PublicUrl = null,
        string? WarrantyTerms = null,
        NamesOnCertificates NamesOnCertificates = NamesOnCertificates.Full,
        bool SingleHanded = false,
        string? Reason = null,
        int? BasedOn = null
    );

    public static Task<Results<Recorded<WorkshopAnswer>, Problem>> HandleAsync(
        Input input,
        SignedIn signedIn,
        ReviseWorkshop use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor, cancellation));

    public async Task<Answer<WorkshopAnswer>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        await writes.Book.LockAsync(WorkshopRevision.Subject, cancellation);
        var latest = await query.LatestAsync(cancellation);
        var decision = WorkshopRevisions.Revise(
            latest,
            new(
                input.Name,
                input.Address,
                input.Contact,
                input.TimeZone,
                input.PublicUrl,
                input.Language,
                DayStyle.DayMonthYear,
                input.WarrantyTerms,
                input.CertificateSections.Shown,
                input.NamesOnCertificates,
                input.SingleHanded,
                input.Reason
            ),
            input.BasedOn,
            TimeZones.All,
            WorkshopLanguage.WithWords,
            writes.Stamp(actor.PersonId)
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        if (decision.Facts.Count > 0)
        {
            await writes.Book.AppendAsync(WorkshopRevision.Subject, "revise-workshop", decision.Facts, cancellation);
            current.Forget();
        }

        return Answer.Created(
            WorkshopAnswer.Of((await notice.ReadAsync(cancellation)) with { Revision = decision.Value }, new(actor.Badge, actor.Name))
        );
    }
}
