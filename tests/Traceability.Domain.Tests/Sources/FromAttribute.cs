namespace Traceability.Domain.Tests.Sources;

/// <summary>Says of a test's expected values where they are from. Every test in the two folders of outside values has one.</summary>
[AttributeUsage(AttributeTargets.Method, AllowMultiple = true)]
public sealed class FromAttribute(SourceKind kind, string where) : Attribute
{
    public Source Source { get; } = new(kind, where);
}

/// <summary>The test's cases are the rows of a data file, and each row names its own source.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class FromEachRowAttribute : Attribute;
