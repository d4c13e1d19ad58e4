using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Traceability.Web.Tests.Contract;

/// <summary>One operation, one name: what the contract calls a call is what its class is called.</summary>
public sealed class OperationNamesTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public void Every_operation_is_called_like_the_class_that_maps_it()
    {
        var named = workshop
            .Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.RoutePattern.RawText?.StartsWith("/api/", StringComparison.Ordinal) is true)
            .Select(e => (e.Metadata.GetMetadata<IEndpointNameMetadata>()?.EndpointName, Handler: e.Metadata.GetMetadata<MethodInfo>()))
            .ToList();
        Assert.True(named.Count > 90);
        Assert.Empty(
            named
                .Where(n => n.EndpointName != JsonNamingPolicy.CamelCase.ConvertName(n.Handler!.DeclaringType!.Name))
                .Select(n => $"{n.EndpointName}: {n.Handler!.DeclaringType!.Name}")
        );
    }
}
