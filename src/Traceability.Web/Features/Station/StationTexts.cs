namespace Traceability.Web.Features.Station;

/// <summary>Names the texts of the builders' pages; they are in StationTexts.resx.</summary>
public sealed class StationTexts;
