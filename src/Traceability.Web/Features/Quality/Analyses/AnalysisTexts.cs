namespace Traceability.Web.Features.Quality.Analyses;

/// <summary>Names the resource file of the analyses' pages.</summary>
public sealed class AnalysisTexts;
