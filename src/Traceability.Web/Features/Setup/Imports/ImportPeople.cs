using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Setup.People;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>
/// People, each with a code by which the person sets the own PIN. Only for the lead: who lets people in also says what they may do.
/// </summary>
public sealed class ImportPeople(AddPerson add)
    : ImportKind(
        "people",
        [
            new("badge", true, "BUILD1"),
            new("name", true, "Builder One"),
            new("roles", false, "builder"),
            new("qualifications", false, "bonding soldering"),
        ],
        Role.Lead
    )
{
    private readonly List<ImportedCode> codes = [];

    /// <summary>The codes of the people added in this run.</summary>
    internal IReadOnlyList<ImportedCode> Codes => codes;

    /// <summary>A run that is begun again has given nobody a code yet.</summary>
    internal void Forget() => codes.Clear();

    internal override async Task<Refusal?> AddAsync(ImportLine line, Actor actor, CancellationToken cancellation)
    {
        var input = new AddPerson.Input(line.Text("badge"), line.Text("name"), line.RolesOf("roles"), line.CodesOf("qualifications"));
        var answer = await add.RunAsync(input, actor.PersonId, cancellation);
        if (answer.Value is { } added)
        {
            codes.Add(new(added.Badge, added.Name, added.Code, added.ExpiresAt));
        }

        return answer.Refusal;
    }
}

/// <summary>A code by which somebody who was just added sets the own PIN; shown this once.</summary>
/// <param name="Badge" example="BUILD1">The badge.</param>
/// <param name="Name" example="Builder One">The name.</param>
/// <param name="Code" example="ABCD-EFGH-JKMN-PQRS">The code.</param>
/// <param name="ExpiresAt" example="2026-02-01T14:20:00Z">Until when it is good.</param>
public sealed record ImportedCode(string Badge, string Name, string Code, DateTimeOffset ExpiresAt);
