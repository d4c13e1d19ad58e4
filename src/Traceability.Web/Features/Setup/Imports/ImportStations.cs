using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Setup.Stations;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>Benches and cabinets.</summary>
public sealed class ImportStations(AddStation add)
    : ImportKind("stations", [new("code", true, "PLATE-1"), new("title", true, "Hot plate 1")], Role.Lead, Role.Importer)
{
    internal override async Task<Refusal?> AddAsync(ImportLine line, Actor actor, CancellationToken cancellation) =>
        (await add.RunAsync(new(line.Text("code"), line.Text("title")), actor.PersonId, cancellation)).Refusal;
}
