namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>Names the resource file of the workshop's own page.</summary>
public sealed class OwnWorkshopTexts;
