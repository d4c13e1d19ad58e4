namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>How a film is mounted, and where the air is, while its resonance is read.</summary>
public enum BaffleCondition
{
    /// <summary>In an infinite rigid plate, with air on one side only.</summary>
    BaffledOneSide,

    /// <summary>In an infinite rigid plate, with air on both sides.</summary>
    BaffledBothSides,

    /// <summary>On an open ring in free air, with air on both sides.</summary>
    Unbaffled,
}

/// <summary>The shape in which a film moves, over x = r/a.</summary>
public enum ModeShape
{
    /// <summary>The fundamental of a membrane in vacuo, J0(j01 x).</summary>
    MembraneFundamental,

    /// <summary>A membrane under even pressure, 1 - x^2.</summary>
    StaticParabola,

    /// <summary>The usual estimate for a clamped plate, (1 - x^2)^2.</summary>
    ClampedPlate,

    /// <summary>A stiff disc, 1.</summary>
    RigidPiston,
}
