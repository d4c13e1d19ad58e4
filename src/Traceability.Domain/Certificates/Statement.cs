namespace Traceability.Domain.Certificates;

/// <summary>A condition or definition under which the values of a certificate hold.</summary>
/// <param name="Term" example="Reference axis">What it is about, such as "Reference axis".</param>
/// <param name="Text" example="Perpendicular to the front diaphragm, through its centre.">What is stated.</param>
public sealed record Statement(string Term, string Text);
