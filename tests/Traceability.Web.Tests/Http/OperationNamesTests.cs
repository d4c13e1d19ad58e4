using System.Reflection;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Traceability.Web.Tests.Http;

/// <summary>Whoever knows the name of an operation from the contract finds its code under the same name.</summary>
public sealed class OperationNamesTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("Access")]
    [InlineData("Parts")]
    [InlineData("Station")]
    public void An_operation_is_called_like_the_class_that_handles_it(string room)
    {
        var operations = Operations()
            .Where(o => $"{o.Handler.Namespace}.".StartsWith($"Traceability.Web.Features.{room}.", StringComparison.Ordinal))
            .ToList();
        Assert.NotEmpty(operations);
        Assert.All(operations, o => Assert.Equal(char.ToUpperInvariant(o.Name[0]) + o.Name[1..], o.Handler.Name));
    }

    private IEnumerable<(string Name, Type Handler)> Operations() =>
        from endpoint in workshop.Services.GetRequiredService<EndpointDataSource>().Endpoints
        let name = endpoint.Metadata.GetMetadata<IEndpointNameMetadata>()?.EndpointName
        let handler = endpoint.Metadata.GetMetadata<MethodInfo>()?.DeclaringType
        where name is not null && handler is not null
        select (name, handler);
}
