namespace Traceability.Web.Features.Setup.Routes;

/// <summary>The words of the pages on which routes are begun and edited; in <c>RouteEditTexts.resx</c>.</summary>
public sealed class RouteEditTexts;
