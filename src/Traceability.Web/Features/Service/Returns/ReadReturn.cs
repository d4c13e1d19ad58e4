using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>One return with what was found and done.</summary>
public sealed class ReadReturn(WorkshopContext db, ReturnRows rows) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/returns/{id:guid}", HandleAsync)
            .For(Role.Service, Role.Quality)
            .Is(Subjects.Returns, "readReturn", "One return with what was found and done.");

    /// <param name="id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The return.</param>
    public static async Task<Results<Ok<ReturnRow>, Problem>> HandleAsync(Guid id, ReadReturn use, CancellationToken cancellation) =>
        await use.FindAsync(id, cancellation) is { } found
            ? TypedResults.Ok(found)
            : ProblemAnswers.From(Refusal.NotFound(ServiceSentences.ThereIsNoReturn(id)));

    /// <summary>One return, or null.</summary>
    public async Task<ReturnRow?> FindAsync(Guid id, CancellationToken cancellation) =>
        await rows.OfAsync(await db.Set<UnitReturn>().AsNoTracking().Where(r => r.Id == id).ToListAsync(cancellation), cancellation)
            is [var found, ..]
            ? found
            : null;
}
