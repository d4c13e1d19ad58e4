using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.History;
using Traceability.Web.Features.Parts.Structure;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Life;

/// <summary>Everything that one page shows of a part, now or as it was at a time.</summary>
public sealed class PartLife(
    DossierReader dossiers,
    GateContexts contexts,
    Writes writes,
    ReadHistory histories,
    ReadMadeOf contents,
    NameQuery names,
    EvidenceCharts charts,
    InstrumentCheckFindings instruments
)
{
    public sealed record Output(
        Dossier Dossier,
        DateTimeOffset? AsOf,
        IReadOnlyList<GateVerdict> Gates,
        IReadOnlyList<HistoryEntry> History,
        ReadMadeOf.Output MadeOf,
        IReadOnlyList<AttemptDetails> Attempts,
        Func<Guid, Who> Who
    );

    /// <summary>The life, or null when no part has that serial or lies in that carrier.</summary>
    public async Task<Output?> RunAsync(string serial, DateTimeOffset? asOf, Actor reader, CancellationToken cancellation)
    {
        if (await PartLookup.FindAsync(serial, dossiers, cancellation) is not { } now)
        {
            return null;
        }

        var part = now.Part;
        var then = asOf is null ? now : new Dossier(part, now.Route, [.. now.Facts.Where(f => f.OccurredAt <= asOf)], PartPlacement.None);
        var people = await names.PeopleAsync(now.Facts.Select(f => f.By), cancellation);
        var gates = asOf is null ? Gatekeeper.EvaluateAll(now, contexts.At(writes.Now, reader.Is(Role.Builder) ? reader : null)) : [];
        return new(
            then,
            asOf,
            gates,
            (await histories.RunAsync(part.Serial, asOf, cancellation))!.Items,
            (await contents.RunAsync(part.Serial, asOf, cancellation))!,
            await AttemptsAsync(then, cancellation),
            id => people.GetValueOrDefault(id, Persistence.Queries.Who.Nobody)
        );
    }

    private async Task<IReadOnlyList<AttemptDetails>> AttemptsAsync(Dossier dossier, CancellationToken cancellation)
    {
        var details = new List<AttemptDetails>();
        var findings = await instruments.OfAsync(dossier, dossier.Attempts, cancellation);
        foreach (var attempt in dossier.Attempts.OrderBy(a => a.Attempt.OccurredAt))
        {
            details.Add(
                new(
                    attempt,
                    dossier.Route.Find(attempt.Stage),
                    dossier.CountingPass(attempt.Stage)?.Id == attempt.Id,
                    await charts.OfAsync(dossier, attempt, cancellation),
                    findings[attempt.Id]
                )
            );
        }

        return details;
    }
}
