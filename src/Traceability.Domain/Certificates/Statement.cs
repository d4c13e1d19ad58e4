namespace Traceability.Domain.Certificates;

/// <summary>A condition or definition under which the values of a certificate hold.</summary>
/// <param name="Term">What it is about, such as "Reference axis".</param>
/// <param name="Text">What is stated.</param>
public sealed record Statement(string Term, string Text);
