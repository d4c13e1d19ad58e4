namespace Traceability.Web.Features.Shared;

/// <summary>Names the texts of the desk's pages; they are in DeskTexts.resx.</summary>
public sealed class DeskTexts;
