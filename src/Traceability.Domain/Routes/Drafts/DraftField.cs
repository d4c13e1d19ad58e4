namespace Traceability.Domain.Routes.Drafts;

/// <summary>What is written under a key of a route file.</summary>
public enum DraftSort
{
    /// <summary>A text.</summary>
    Text,

    /// <summary>A number.</summary>
    Number,

    /// <summary>True or false; left out when it is what it is without being said.</summary>
    Flag,

    /// <summary>A list of words, without commas.</summary>
    Words,

    /// <summary>A list of sentences.</summary>
    Sentences,

    /// <summary>A list of things that each have keys of their own.</summary>
    Items,

    /// <summary>One thing with keys of its own.</summary>
    Group,

    /// <summary>Numbers under names that the stage's method says.</summary>
    Numbers,
}

/// <summary>A key of a route file: what stands under it.</summary>
/// <param name="Key">The key.</param>
/// <param name="Sort">What stands under it.</param>
/// <param name="Fields">The keys of a group or of each item, in the order in which they are written.</param>
public sealed record DraftField(string Key, DraftSort Sort, params IReadOnlyList<DraftField> Fields)
{
    /// <summary>What a flag is when nothing is said.</summary>
    public bool Otherwise { get; init; }
}
