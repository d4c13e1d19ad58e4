namespace Traceability.Domain.Stages.Methods;

/// <summary>
/// Something that a method reads under <c>parameters</c> of a route's stage, as its method says it: the one place where it is described,
/// checked against and offered for editing.
/// </summary>
/// <param name="Name">Its key in the route file; a number ends in its unit where it has one.</param>
/// <param name="Unit">The unit of a number, as it is printed; "" for a bare number. Null for a key that is no number.</param>
/// <param name="Description">What it is for, and what is taken when the route does not state it.</param>
public sealed record MethodParameter(string Name, string? Unit, string Description)
{
    /// <summary>The least value; 0 means above zero unless <see cref="MayBeZeroOrBelow"/>. Null when there is none.</summary>
    public decimal? Lower { get; init; } = Unit is null ? null : 0m;

    /// <summary>The greatest value, included; null when there is none.</summary>
    public decimal? Upper { get; init; }

    /// <summary>True when a route cannot do without it.</summary>
    public bool Required { get; init; }

    /// <summary>True for a number that may also be zero or below, down to <see cref="Lower"/> where there is one.</summary>
    public bool MayBeZeroOrBelow { get; init; }

    /// <summary>True for a number under <c>parameters: numbers</c>; false for a key of its own.</summary>
    public bool IsNumber => Unit is not null;
}

/// <summary>Something that a method computes, when a route has a characteristic of that name with <c>entered: false</c>.</summary>
/// <param name="Name">The name, with {phase}, {file}, {pattern} or {side} where the route says which.</param>
/// <param name="Unit">Its unit, as routes write it.</param>
public sealed record MethodValue(string Name, string Unit)
{
    /// <summary>True when a route must have it.</summary>
    public bool Required { get; init; }
}
