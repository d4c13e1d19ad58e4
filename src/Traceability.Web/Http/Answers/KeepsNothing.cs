namespace Traceability.Web.Http.Answers;

/// <summary>
/// Marks what takes a PIN, a code or the key of a link and hands out what only its asker may know: an Idempotency-Key is accepted there,
/// and neither a hash of the request nor the answer is kept.
/// </summary>
public sealed class KeepsNothing
{
    private static readonly KeepsNothing Mark = new();

    private KeepsNothing() { }

    /// <summary>Marks an endpoint.</summary>
    public static TBuilder On<TBuilder>(TBuilder endpoint)
        where TBuilder : IEndpointConventionBuilder => endpoint.WithMetadata(Mark);

    /// <summary>Whether the request goes to such an endpoint.</summary>
    public static bool Is(HttpContext context) => context.GetEndpoint()?.Metadata.GetMetadata<KeepsNothing>() is not null;
}
