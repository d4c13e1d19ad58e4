namespace Traceability.Documents.Labels;

/// <summary>What stands on one label.</summary>
/// <param name="Code">The printed code, check character included: drawn for the scanner, and below in letters for the hand.</param>
/// <param name="Title">What it names or does: "Capsule K-26-0412-5", "Start".</param>
/// <param name="Detail">A second line, such as model, supplier lot or what to do; may be empty.</param>
public sealed record LabelText(string Code, string Title, string? Detail = null);
