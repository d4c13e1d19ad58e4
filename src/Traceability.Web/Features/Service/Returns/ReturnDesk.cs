using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Something was recorded about a return.</summary>
/// <param name="Id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The id of what was recorded.</param>
/// <param name="Return" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The return that it belongs to.</param>
/// <param name="Part">The unit as it stands now.</param>
public sealed record ReturnStep(Guid Id, Guid Return, PartAnswer Part);

/// <summary>What every command on a return does before it decides and after.</summary>
public sealed class ReturnDesk(WorkshopContext db, Writes writes, WorkBench bench)
{
    /// <summary>Opens the unit of a return under its lock and lets the command decide.</summary>
    public async Task<Answer<ReturnStep>> OnReturnAsync(
        Guid returnId,
        DateTimeOffset? occurredAt,
        Actor actor,
        Func<OpenPart, Stamp, Answer<ReturnStep>> decide,
        CancellationToken cancellation
    )
    {
        if (await bench.ProblemAsync(occurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        var partId = await db.Set<UnitReturn>().Where(r => r.Id == returnId).Select(r => (Guid?)r.PartId).FirstOrDefaultAsync(cancellation);
        return partId is null
            ? Refusal.NotFound(ServiceSentences.ThereIsNoReturn(returnId))
            : decide((await writes.Book.OpenAsync(partId.Value, cancellation))!, writes.Stamp(actor.PersonId, occurredAt));
    }

    /// <summary>Appends what was decided, and says how the unit stands after it.</summary>
    public Answer<ReturnStep> Append<T>(OpenPart part, string command, Decision<T> decision, Func<T, Guid> returnOf)
        where T : Fact
    {
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, command, decision.Facts);
        return Answer.Created(new ReturnStep(decision.Value!.Id, returnOf(decision.Value), bench.AnswerOf(part.Dossier)));
    }
}
