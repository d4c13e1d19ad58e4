using System.Globalization;
using Microsoft.OpenApi;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Http.Description;

/// <summary>Which errors a call can answer with, by rule: who may, what it names, whether it records, what its body is.</summary>
internal static class PossibleProblems
{
    private static readonly Dictionary<int, string> Words = new()
    {
        [400] = "The request is not valid; errors says what is wrong in which field.",
        [401] = "Not signed in, or what proves who it is does not fit.",
        [403] = "Not for this person, or the PIN is wrong.",
        [404] = "There is no such thing.",
        [409] = "Not in this state, or a gate is closed; checks say what is missing.",
        [413] = "The body is too large; nothing was recorded.",
        [415] = "This kind of content is not taken here.",
        [422] = "The Idempotency-Key was used for another request.",
        [429] = "Too many attempts or requests; Retry-After says when to come again.",
        [503] = "The service is starting, or its database does not answer; Retry-After says when to come again.",
    };

    /// <summary>Adds them to the answers of the call.</summary>
    /// <param name="operation">The call.</param>
    /// <param name="metadata">What its endpoint says of itself.</param>
    /// <param name="bodyHasPin">True when a PIN is asked for in the body.</param>
    /// <param name="problem">The shape of a problem.</param>
    public static void Add(OpenApiOperation operation, IReadOnlyList<object> metadata, bool bodyHasPin, IOpenApiSchema problem)
    {
        operation.Responses ??= [];
        foreach (var status in Of(operation, metadata, bodyHasPin))
        {
            var content = new Dictionary<string, OpenApiMediaType> { [ProblemAnswers.MediaType] = new() { Schema = problem } };
            operation.Responses.TryAdd(
                status.ToString(CultureInfo.InvariantCulture),
                new OpenApiResponse { Description = Words[status], Content = content }
            );
        }
    }

    private static IEnumerable<int> Of(OpenApiOperation operation, IReadOnlyList<object> metadata, bool bodyHasPin)
    {
        var (open, secret) = (Callers.Of(metadata).Anybody, metadata.OfType<KeepsNothing>().Any());
        var records = metadata.OfType<HttpMethodMetadata>().Any(m => !m.HttpMethods.Contains(HttpMethods.Get));
        var body = operation.RequestBody is not null;
        var names = operation.Parameters?.Any(p => p is { In: ParameterLocation.Path } or { In: ParameterLocation.Query, Required: true });
        (int Status, bool If)[] rules =
        [
            (400, true),
            (401, !open || secret),
            (403, !open || secret),
            (404, names is true || (records && body && !open)),
            (409, records && (!open || secret)),
            (413, body),
            (415, body),
            (422, records && !open && !secret),
            (429, open || bodyHasPin),
            (503, true),
        ];
        return rules.Where(r => r.If).Select(r => r.Status);
    }
}
