namespace Traceability.Domain.Codes;

/// <summary>What a text turned out to be when read as a printed code.</summary>
public abstract record CodeReading
{
    private CodeReading() { }

    /// <summary>A printed code, correctly read.</summary>
    public sealed record Good(PrintedCode Code) : CodeReading;

    /// <summary>It looks like a printed code, but its last character should be another: something was mistyped or misread.</summary>
    public sealed record WrongCheck(CodeKind Kind, string Id, char Found, char Expected) : CodeReading;

    /// <summary>Not one of our printed codes: a number, a bare serial, somebody else's label.</summary>
    public sealed record NotPrinted : CodeReading;
}
