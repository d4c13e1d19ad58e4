namespace Traceability.Documents.Logos;

/// <summary>Why a file cannot be a workshop's logo.</summary>
public enum LogoFault
{
    /// <summary>Neither SVG nor PNG, or broken.</summary>
    NotAPicture,

    /// <summary>A PNG wider or higher than <see cref="LogoFile.MostPixels"/>.</summary>
    TooManyPixels,

    /// <summary>An SVG that holds a script, or something that runs one.</summary>
    Script,

    /// <summary>An SVG that holds a document of another kind.</summary>
    ForeignContent,

    /// <summary>An SVG that fetches something from elsewhere, or refers to another place in itself.</summary>
    Reference,

    /// <summary>An SVG that declares entities or a document type.</summary>
    Declaration,

    /// <summary>An SVG with something that is not drawn here: text, a gradient, a filter.</summary>
    NotDrawn,

    /// <summary>An SVG without a size or with nothing to see.</summary>
    Empty,
}

/// <summary>Why, and at what: the element or attribute, where one is to blame.</summary>
public sealed record LogoProblem(LogoFault Fault, string? What = null);

/// <summary>Thrown inside the reader; whoever reads a logo catches it.</summary>
internal sealed class LogoException(LogoFault fault, string? what = null) : Exception($"{fault}: {what}")
{
    public LogoProblem Problem { get; } = new(fault, what);
}
