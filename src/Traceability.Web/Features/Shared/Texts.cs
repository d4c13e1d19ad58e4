namespace Traceability.Web.Features.Shared;

/// <summary>
/// Names the texts that every page shares; they are in Texts.resx. A folder of pages may have a class and a .resx of its own.
/// </summary>
public sealed class Texts;
