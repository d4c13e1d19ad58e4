namespace Traceability.Web.Features.Parts.Work;

/// <summary>That something is to be fitted at a position: a part, or some of a lot.</summary>
public sealed record FitRequest(string Position, string? Child = null, string? Lot = null, decimal? Quantity = null);
