using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Overview;

/// <summary>The gates of all stages of a part; what a builder lacks is said of the one who asks.</summary>
public sealed class ReadGates : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/gates", HandleAsync)
            .Is(Subjects.Parts, "readGates", "For every stage: may it start, when, and what is missing.");

    /// <param name="serial" example="US26-00034">The part's serial, or the carrier that it lies in.</param>
    public static async Task<Results<JsonOrCsv<Page<GateAnswer>>, Problem>> HandleAsync(
        string serial,
        HttpContext http,
        PageRequest page,
        DossierReader dossiers,
        GateContexts contexts,
        Writes writes,
        SignedIn signedIn,
        CancellationToken cancellation
    )
    {
        if (await PartLookup.FindAsync(serial, dossiers, cancellation) is not { } part)
        {
            return PartLookup.Unknown(serial);
        }

        var actor = signedIn.Actor.Is(Role.Builder) ? signedIn.Actor : null;
        return JsonOrCsv.Of(
            page.Part([.. Gatekeeper.EvaluateAll(part, contexts.At(writes.Now, actor)).Select(GateAnswer.Of)], gate => gate.Stage)
        );
    }
}
