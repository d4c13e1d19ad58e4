using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Releases a lot, with the reason.</summary>
public sealed class ReleaseLot : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/lots/{number}/release", HandleAsync).For(Role.Quality).Is(Subjects.Lots, "releaseLot", "Release a lot.");

    /// <summary>Why it is decided so.</summary>
    /// <param name="Reason" example="incoming check passed">Why.</param>
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
            decisions.RunAsync(number, LotState.Released, input.Reason, input.OccurredAt, signedIn.Actor, cancellation)
        );
}
