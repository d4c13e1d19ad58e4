using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Nonconformities;

/// <summary>Somebody saw that a part does not conform; it stops until the quality lead decides.</summary>
public sealed class RaiseNonconformity(Writes writes, WorkBench bench) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/nonconformities", HandleAsync)
            .For(Role.Builder, Role.Quality, Role.Service)
            .Is(Subjects.Nonconformities, "raiseNonconformity", "Report that a part does not conform; it stops until decided.");

    public sealed record Input(string Code, string Description, DateTimeOffset? OccurredAt = null);

    public sealed record Output(Guid Id, string Code, string Description, PartAnswer Part);

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
