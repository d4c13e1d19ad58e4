using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Setup.Carriers;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>Jigs, trays and tins.</summary>
public sealed class ImportCarriers(AddCarrier add)
    : ImportKind("carriers", [new("code", true, "JIG-07"), new("kind", false, "jig")], Role.Lead, Role.Importer)
{
    internal override async Task<Refusal?> AddAsync(ImportLine line, Actor actor, CancellationToken cancellation) =>
        (await add.RunAsync(new(line.Text("code"), line.May("kind") ?? "carrier"), actor.PersonId, cancellation)).Refusal;
}
