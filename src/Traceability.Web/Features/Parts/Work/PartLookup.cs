using Traceability.Domain.Gates;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>Finds the part that a path names, by its serial or by the carrier that it lies in.</summary>
public static class PartLookup
{
    /// <summary>All that is known of the part, to be read and not locked; null when there is none.</summary>
    public static async Task<Dossier?> FindAsync(string serialOrCarrier, DossierReader dossiers, CancellationToken cancellation) =>
        await dossiers.FindAsync(serialOrCarrier, cancellation) is { } id ? await dossiers.LoadAsync(id, cancellation) : null;

    /// <summary>That there is none: 404.</summary>
    public static Problem Unknown(string serialOrCarrier) =>
        ProblemAnswers.From(Refusal.NotFound(PartsSentences.ThereIsNoPartOrCarrier(serialOrCarrier)));
}
