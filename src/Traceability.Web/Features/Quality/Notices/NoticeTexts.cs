namespace Traceability.Web.Features.Quality.Notices;

/// <summary>Names the resource file of the notices.</summary>
public sealed class NoticeTexts;
