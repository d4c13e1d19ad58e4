using Microsoft.AspNetCore.Routing.Matching;

namespace Traceability.Web.Http;

/// <summary>Marks an endpoint that stands at the address of a page and answers only programs: those that accept JSON and no page.</summary>
public sealed class JsonOnly : MatcherPolicy, IEndpointSelectorPolicy
{
    private sealed class Mark;

    /// <inheritdoc/>
    public override int Order => 0;

    /// <summary>Puts the mark on an endpoint.</summary>
    public static void On(IEndpointConventionBuilder endpoint) =>
        endpoint.Add(builder =>
        {
            builder.Metadata.Add(new Mark());
            ((RouteEndpointBuilder)builder).Order = -1;
        });

    public bool AppliesToEndpoints(IReadOnlyList<Endpoint> endpoints) => endpoints.Any(e => e.Metadata.GetMetadata<Mark>() is not null);

    public Task ApplyAsync(HttpContext httpContext, CandidateSet candidates)
    {
        if (!WantsJson(httpContext.Request))
        {
            for (var i = 0; i < candidates.Count; i++)
            {
                if (candidates.IsValidCandidate(i) && candidates[i].Endpoint.Metadata.GetMetadata<Mark>() is not null)
                {
                    candidates.SetValidity(i, false);
                }
            }
        }

        return Task.CompletedTask;
    }

    private static bool WantsJson(HttpRequest request)
    {
        var accept = request.GetTypedHeaders().Accept;
        return accept.Any(a => a.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase))
            && !accept.Any(a => a.MediaType.Equals("text/html", StringComparison.OrdinalIgnoreCase));
    }
}
