using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Puts a lot (back) into quarantine, with the reason.</summary>
public sealed class QuarantineLot : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/lots/{number}/quarantine", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Lots, "quarantineLot", "Put a lot into quarantine.");

    /// <summary>Why it is decided so.</summary>
    /// <param name="Reason" example="pinholes seen">Why.</param>
    /// <param name="OccurredAt" example="2026-01-31T14:20:00Z">When it was decided; now, when left out.</param>
    public sealed record Input(string Reason, DateTimeOffset? OccurredAt = null);

    /// <param name="number" example="FILM-0007">The lot's number.</param>
    public static Task<Results<Changed<LotAnswer>, Problem>> HandleAsync(
        string number,
        Input input,
        SignedIn signedIn,
        LotDecisions decisions,
        Writes writes
    ) =>
        writes.ChangeAsync(cancellation =>
            decisions.RunAsync(number, LotState.Quarantined, input.Reason, input.OccurredAt, signedIn.Actor, cancellation)
        );
}
