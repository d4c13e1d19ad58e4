namespace Traceability.Web.Features.Setup.Routes;

/// <summary>Names the resource file of the routes' revisions.</summary>
public sealed class RoutePageTexts;
