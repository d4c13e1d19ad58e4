namespace Traceability.Web.Http.Answers;

/// <summary>What the OpenAPI document says of a call beyond its shapes.</summary>
public static class Described
{
    /// <summary>
    /// The subject that the call is listed under, its name for generated clients (lower camel case), and one line that says what it does.
    /// </summary>
    public static RouteHandlerBuilder Is(this RouteHandlerBuilder call, string subject, string name, string summary) =>
        call.WithTags(subject).WithName(name).WithSummary(summary);

    /// <summary>It takes a secret: neither a hash of the request nor the answer is kept.</summary>
    public static RouteHandlerBuilder KeepsNothing(this RouteHandlerBuilder call) => Answers.KeepsNothing.On(call);

    /// <summary>Its body is a file, byte for byte, of one of these kinds. Only said here; the handler looks at what came.</summary>
    public static RouteHandlerBuilder TakesFile(this RouteHandlerBuilder call, params string[] mediaTypes) =>
        call.WithMetadata(new FileBody(mediaTypes));

    /// <summary>Its body is one <typeparamref name="T"/> or a list of them.</summary>
    public static RouteHandlerBuilder TakesOneOrMany<T>(this RouteHandlerBuilder call) => call.WithMetadata(new OneOrManyBody(typeof(T)));
}
