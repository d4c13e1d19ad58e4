using Traceability.Domain.Records;

namespace Traceability.Domain.Gates;

/// <summary>A signed-in person as the gates see them.</summary>
public sealed record Actor(
    Guid PersonId,
    string Badge,
    string Name,
    IReadOnlySet<Role> Roles,
    IReadOnlyList<QualificationGrant> Qualifications
)
{
    /// <summary>
    /// Set where the workshop works single-handed: a second sign-in with a reason then stands in the place of a second person.
    /// </summary>
    public SingleHandedWork? SingleHanded { get; init; }

    /// <summary>The same person, who says why they do alone what two should; where two are needed it changes nothing.</summary>
    public Actor Alone(string? because) => SingleHanded is null ? this : this with { SingleHanded = new(because) };

    /// <summary>True when the person has the role.</summary>
    public bool Is(Role role) => Roles.Contains(role);

    /// <summary>True for a machine that acts under its own name: it works for whoever opened the attempt.</summary>
    public bool IsMachine => Is(Role.Instrument) && !Is(Role.Builder) && !Is(Role.Quality);

    /// <summary>True when the latest word on that qualification is a grant that has not run out on <paramref name="day"/>.</summary>
    public bool IsQualifiedFor(string code, DateOnly day) =>
        Qualifications.Where(q => q.Code == code).MaxBy(q => q.RecordedAt) is { Given: true } grant
        && (grant.ValidUntil is null || grant.ValidUntil >= day);
}
