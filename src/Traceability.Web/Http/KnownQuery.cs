using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Metadata;

namespace Traceability.Web.Http;

/// <summary>
/// Refuses a query name that an address of the API does not take: a filter with a slip in its name would be passed over and everything
/// answered. What an address takes is read off its handler.
/// </summary>
public static class KnownQuery
{
    private static readonly ConcurrentDictionary<Endpoint, IReadOnlyList<string>> Known = new();

    /// <summary>Lets through what is known.</summary>
    public static async Task RefuseOthersAsync(HttpContext context, RequestDelegate next)
    {
        if (
            context.Request.Query.Count > 0
            && context.Request.Path.StartsWithSegments("/api")
            && context.GetEndpoint() is RouteEndpoint endpoint
            && endpoint.Metadata.GetMetadata<MethodInfo>() is { } handler
        )
        {
            var known = Known.GetOrAdd(
                endpoint,
                e => [.. NamesOf(handler, [.. ((RouteEndpoint)e).RoutePattern.Parameters.Select(p => p.Name)])]
            );
            if (context.Request.Query.Keys.FirstOrDefault(k => !known.Contains(k, StringComparer.OrdinalIgnoreCase)) is { } unknown)
            {
                await ProblemAnswers.Of(ProblemKinds.UnknownQuery, Say(unknown, known)).ExecuteAsync(context);
                return;
            }
        }

        await next(context);
    }

    /// <summary>True when the handler answers its list in pages.</summary>
    public static bool IsPaged(MethodInfo handler) => handler.GetParameters().Any(p => p.ParameterType == typeof(PageRequest));

    private static string Say(string unknown, IReadOnlyList<string> known) =>
        known.Count == 0 ? InputTexts.NoSuchQueryNameAtAll(unknown) : InputTexts.NoSuchQueryName(unknown, string.Join(", ", known));

    private static IEnumerable<string> NamesOf(MethodInfo handler, IReadOnlyCollection<string> inPath) =>
        handler.GetParameters().SelectMany(p => NamesOf(p, inPath));

    private static IEnumerable<string> NamesOf(ParameterInfo parameter, IReadOnlyCollection<string> inPath) =>
        parameter.ParameterType == typeof(PageRequest) ? PageRequest.QueryNames
        : parameter.IsDefined(typeof(AsParametersAttribute))
            ? parameter.ParameterType.GetConstructors().Single().GetParameters().SelectMany(p => NamesOf(p, inPath))
        : parameter.GetCustomAttributes().OfType<IFromQueryMetadata>().FirstOrDefault() is { } said ? [said.Name ?? NameOf(parameter)]
        : IsSimple(parameter.ParameterType) && !inPath.Contains(parameter.Name!) ? [NameOf(parameter)]
        : [];

    private static string NameOf(ParameterInfo parameter) => JsonNamingPolicy.CamelCase.ConvertName(parameter.Name!);

    private static bool IsSimple(Type type)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain == typeof(string)
            || plain.IsEnum
            || plain.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IParsable<>));
    }
}
