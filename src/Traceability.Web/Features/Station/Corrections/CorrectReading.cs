using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Http;
using DomainCorrectReading = Traceability.Domain.Work.CorrectReading;

namespace Traceability.Web.Features.Station.Corrections;

/// <summary>Supersedes a wrong reading; both stay visible. A verdict that turns by it raises a nonconformity by itself.</summary>
public sealed class CorrectReading(WorkshopContext db, Writes writes, WorkBench bench, EvidenceQuery evidence)
{
    public sealed record Input(NumberText Value, string Reason, DateTimeOffset? OccurredAt = null);

    public sealed record Output(Guid Id, string Serial, ReadingAnswer Reading, Verdict? VerdictBefore, Verdict? VerdictAfter, NonconformityAnswer? Nonconformity);

    public static Task<IResult> HandleAsync(Guid id, Input input, SignedIn signedIn, CorrectReading use, Writes writes) =>
        writes.RunAsync(cancellation => use.RunAsync(id, input, signedIn.Actor, cancellation));

    public async Task<Answer> RunAsync(Guid readingId, Input input, Actor actor, CancellationToken cancellation)
    {
        if (!EnteredDecimal.TryParseReading(input.Value.Text, out var number, out var badNumber))
        {
            return Refusal.Invalid("value", badNumber);
        }

        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await db.Set<Reading>().AsNoTracking().FirstOrDefaultAsync(r => r.Id == readingId, cancellation) is not { } reading)
        {
            return Refusal.NotFound($"there is no reading {readingId}");
        }

        var part = (await writes.Book.OpenAsync(reading.PartId, cancellation))!;
        var files = await evidence.FilesOfAsync(part.Dossier, reading.AttemptId, cancellation);
        var attempt = part.Dossier.Attempts.First(a => a.Id == reading.AttemptId);
        var judgedOn = attempt.Ending is { } ending ? part.Dossier.CorrectedAsOf(ending.RecordedAt) : part.Dossier;
        var context = await bench.EndingAsync(judgedOn, attempt, attempt.Ending?.OccurredAt ?? writes.Now, actor, cancellation);
        var decision = DomainCorrectReading.Decide(part.Dossier, readingId, number, input.Reason, actor, files, context, writes.Stamp(actor.PersonId, input.OccurredAt));
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "correct-reading", decision.Facts);
        var corrected = decision.Value!;
        var view = part.Dossier.Attempts.First(a => a.Id == reading.AttemptId).Readings.First(r => r.Reading.Id == readingId);
        return Answer.Created(new Output(
            corrected.Correction.Id, part.Dossier.Part.Serial, ReadingAnswer.Of(view), corrected.VerdictBefore, corrected.VerdictAfter, NonconformityAnswer.Of(corrected.Nonconformity)));
    }
}
