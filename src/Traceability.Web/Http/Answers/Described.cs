namespace Traceability.Web.Http.Answers;

/// <summary>What the OpenAPI document says of a call beyond its shapes.</summary>
public static class Described
{
    /// <summary>The subject that the call is listed under, its name for generated clients (lower camel case), and one line that says what it does.</summary>
    public static RouteHandlerBuilder Is(this RouteHandlerBuilder call, string subject, string name, string summary) =>
        call.WithTags(subject).WithName(name).WithSummary(summary);

    /// <summary>It takes a secret: neither a hash of the request nor the answer is kept.</summary>
    public static RouteHandlerBuilder KeepsNothing(this RouteHandlerBuilder call) => Http.KeepsNothing.On(call);
}
