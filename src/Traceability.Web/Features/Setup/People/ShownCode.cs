namespace Traceability.Web.Features.Setup.People;

/// <summary>A code on the page that shows it, once.</summary>
public sealed record ShownCode(string Name, string Badge, string Code, DateTimeOffset ExpiresAt);
