using System.Text.Json.Nodes;
using Traceability.Domain.Tests.Architecture;

namespace Traceability.Web.Tests.Contract;

/// <summary>Clients are made from a kept copy of the OpenAPI document: a change of the contract shows as a change of that file.</summary>
public sealed class KeptDocumentTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string[] Kept = ["tests", "Traceability.GeneratedClient", "openapi.json"];

    [Fact]
    public async Task The_kept_document_is_the_one_that_the_service_answers()
    {
        var kept = JsonNode.Parse(await File.ReadAllTextAsync(TheRepository.At(Kept)));
        var now = JsonNode.Parse((await workshop.GetAsync("/openapi/v1.json", null)).Body);
        Assert.True(
            JsonNode.DeepEquals(kept, now),
            $"the contract has changed: start the service and run curl -s http://127.0.0.1:5080/openapi/v1.json -o {string.Join('/', Kept)}"
        );
    }
}
