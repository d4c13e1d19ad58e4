using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>
/// Loads a route file as the next revision of its model and kind: a proposal, until somebody other than its author approves it here with
/// the own PIN. Whom the file names as approver is asked and has not spoken yet. Parts already started keep the revision they have.
/// </summary>
public sealed class LoadRoute(WorkshopContext db, Writes writes, KnownKindsQuery kinds, SharedPrefix prefixes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/routes", HandleAsync)
            .For(Role.Lead)
            .TakesFile("text/yaml")
            .Is(
                Subjects.Routes,
                "loadRoute",
                "Load the next revision of a route; the body is its file. A proposal until it is approved; approvedBy in it is a wish."
            );

    private const int LongestFile = 1024 * 1024;

    /// <summary>Something to be looked at in a line of the file (from 1).</summary>
    /// <param name="Line" example="12">The line, from 1.</param>
    /// <param name="Message" example="there is no lot of the kind varnish">What is to be looked at.</param>
    public sealed record Warning(long Line, string Message);

    /// <summary>
    /// What was loaded. <c>State</c> is <c>proposed</c>. <c>Warnings</c> are kinds of lots, parts and instruments that the workshop
    /// has nothing of: until it has, the revision cannot be approved.
    /// </summary>
    /// <param name="Model" example="TARN-2">The model of its parts.</param>
    /// <param name="Kind" example="capsule">The kind of its parts.</param>
    /// <param name="Revision" example="3">Its number.</param>
    /// <param name="Hash" example="9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08">
    /// SHA-256 of its file, in hexadecimal.
    /// </param>
    /// <param name="EffectiveFrom" example="2026-02-01">The first day on which new parts take it, once it is approved.</param>
    /// <param name="Stages" example="6">How many stages it has.</param>
    /// <param name="Warnings">Kinds that the workshop has nothing of.</param>
    /// <param name="State" example="proposed">Where it stands.</param>
    public sealed record Output(
        string Model,
        string Kind,
        int Revision,
        string Hash,
        DateOnly EffectiveFrom,
        int Stages,
        IReadOnlyList<Warning> Warnings,
        [property: OneOf("RevisionState", "proposed", "waiting", "current", "superseded", "rejected", "withdrawn")] string State
    );

    /// <summary>The body is the route file itself, as text/yaml.</summary>
    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        HttpRequest request,
        SignedIn signedIn,
        LoadRoute use,
        Writes writes,
        CancellationToken cancellation
    )
    {
        using var reader = new StreamReader(request.Body, new UTF8Encoding(false, true));
        var text = await reader.ReadToEndAsync(cancellation);
        return await writes.RecordAsync(c => use.RunAsync(text, signedIn.Actor.PersonId, c));
    }

    public async Task<Answer<Output>> RunAsync(string text, Guid by, CancellationToken cancellation)
    {
        if (text.Length > LongestFile)
        {
            return Refusal.Invalid("route", SetupSentences.RouteFileHasTooManyCharacters);
        }

        var reading = RouteText.Read(text, StageMethods.Requirements);
        if (reading.Route is not { } route)
        {
            return new Refusal(
                RefusalKind.Invalid,
                SetupSentences.RouteCannotBeUsed(string.Join("; ", reading.Problems.Take(5))),
                [],
                new Dictionary<string, string[]> { ["route"] = [.. reading.Problems.Select(p => p.ToString())] }
            );
        }

        if (await ProblemAsync(route, cancellation) is { } problem)
        {
            return problem;
        }

        var warnings = (await kinds.WarningsOfAsync(reading.Named, cancellation)).ToList();
        if (await prefixes.WarningAsync(route, cancellation) is { } shared)
        {
            warnings.Add(new(LineOf(text, "serialPrefix"), shared, false));
        }

        var stamp = writes.Stamp(by);
        var revision = new RouteRevision(
            stamp.NewId(),
            route.Model,
            route.Kind,
            route.Revision,
            text,
            route.Hash,
            route.Author,
            "",
            route.EffectiveFrom,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        await writes.Book.AppendAsync(revision.Id, "load-route", [revision], cancellation);
        return Answer.Created(
            new Output(
                route.Model,
                route.Kind,
                route.Revision,
                route.Hash,
                route.EffectiveFrom,
                route.Stages.Count,
                [.. warnings.OrderBy(w => w.Line).Select(w => new Warning(w.Line, w.Message))],
                "proposed"
            )
        );
    }

    /// <summary>Why a route cannot come into force: nobody could work by it.</summary>
    public static Refusal? UnknownKinds(IEnumerable<RouteWarning> warnings) =>
        warnings.Where(w => w.Stops).Select(w => SetupSentences.AtLine(w.Line, w.Message)).ToList() is { Count: > 0 } stopping
            ? Refusal.Conflict(SetupSentences.RouteNamesUnknownKinds(string.Join(" ", stopping)))
            : null;

    private static long LineOf(string text, string key) =>
        text.Split('\n').TakeWhile(l => !l.TrimStart().StartsWith(key, StringComparison.Ordinal)).LongCount() + 1;

    private async Task<Refusal?> ProblemAsync(Domain.Routes.Route route, CancellationToken cancellation)
    {
        var known = await db.Set<Person>()
            .Where(p => p.Badge == route.Author || p.Badge == route.ApprovedBy)
            .Select(p => p.Badge)
            .ToListAsync(cancellation);
        if (new[] { route.Author, route.ApprovedBy }.FirstOrDefault(b => b != "" && !known.Contains(b)) is { } stranger)
        {
            return Refusal.Invalid("route", SetupSentences.AuthorAndApproverAreNamedByBadges(stranger));
        }

        if (await db.DecisionAsync(NamedSubject.Of(SetupSort.Model, route.Model), cancellation) is { State: not SetupState.InUse } retired)
        {
            return Refusal.Conflict(SetupSentences.ModelIsRetired(route.Model, retired.Reason), RefusalCode.Retired);
        }

        // The first may bear any number: a route that was kept elsewhere goes on counting here.
        var latest = await db.Set<RouteRevision>()
            .Where(r => r.Model == route.Model && r.Kind == route.Kind)
            .MaxAsync(r => (int?)r.Revision, cancellation);
        return latest is not { } before || route.Revision == before + 1
            ? null
            : Refusal.Conflict(
                SetupSentences.RevisionIsNotTheNext(route.Model, route.Kind, before, before + 1, route.Revision),
                RefusalCode.RevisionOutOfOrder
            );
    }
}
