using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Setup.Kinds;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Nonconformities;

/// <summary>Somebody saw that a part does not conform; it stops until the quality lead decides.</summary>
public sealed class RaiseNonconformity(Writes writes, WorkBench bench, KindDoor kinds) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/nonconformities", HandleAsync)
            .For(Role.Builder, Role.Quality, Role.Service)
            .Is(Subjects.Nonconformities, "raiseNonconformity", "Report that a part does not conform; it stops until decided.");

    /// <summary>What does not conform.</summary>
    /// <param name="Code" example="scratched">What kind of nonconformity it is, in one word.</param>
    /// <param name="Description" example="a scratch of 3 mm across the electrode">What was found.</param>
    /// <param name="OccurredAt" example="2026-11-12T10:40:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(string Code, string Description, DateTimeOffset? OccurredAt = null);

    /// <summary>The nonconformity, and the part as it is now.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c02">The nonconformity's id.</param>
    /// <param name="Code" example="scratched">What kind of nonconformity it is.</param>
    /// <param name="Description" example="a scratch of 3 mm across the electrode">What was found.</param>
    /// <param name="Part">The part as it is now.</param>
    public sealed record Output(Guid Id, string Code, string Description, PartAnswer Part);

    /// <param name="serial" example="CS-0051">The part's serial, or the carrier that it lies in.</param>
    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string serial,
        Input input,
        SignedIn signedIn,
        RaiseNonconformity use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(serial, input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(string serial, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await kinds.ProblemAsync(KindOf.Finding, input.Code, cancellation) is { } retired)
        {
            return retired;
        }

        if (await bench.OpenAsync(serial, cancellation) is not { } part)
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoPartOrCarrier(serial));
        }

        var decision = NonconformityReports.Raise(
            part.Dossier,
            input.Code,
            input.Description,
            writes.Stamp(actor.PersonId, input.OccurredAt)
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "raise-nonconformity", decision.Facts);
        var raised = decision.Value!;
        return Answer.Created(new Output(raised.Id, raised.Code, raised.Description, bench.AnswerOf(part.Dossier)));
    }
}
