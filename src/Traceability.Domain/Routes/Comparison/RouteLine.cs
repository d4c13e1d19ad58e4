namespace Traceability.Domain.Routes.Comparison;

/// <summary>What a line of a route is about.</summary>
public enum RouteAspect
{
    /// <summary>The route itself: its title, the prefix of its serials.</summary>
    Route,

    /// <summary>How a stage is worked: method, loads, attempts, rework, least time open, carrier.</summary>
    Work,

    /// <summary>A characteristic with its limits.</summary>
    Characteristic,

    /// <summary>A slot and what may be fitted in it.</summary>
    Slot,

    /// <summary>A least time since an earlier stage.</summary>
    Wait,

    /// <summary>A longest time since an earlier stage.</summary>
    Window,

    /// <summary>A kind of instrument.</summary>
    Instrument,

    /// <summary>Who may do it: a qualification, or not the builder of another stage.</summary>
    People,

    /// <summary>A caution.</summary>
    Caution,

    /// <summary>A file that belongs to the record.</summary>
    Evidence,

    /// <summary>What must match.</summary>
    Match,

    /// <summary>What the method reads from the route.</summary>
    Parameter,
}

/// <summary>
/// One thing that a route says: of an aspect, about an item (a characteristic, a slot, a phase; empty when the stage itself is meant), in a
/// field of the route file. Numbers are without trailing zeros, so that 1.50 and 1.5 are the same; flags are <c>true</c> or <c>false</c>.
/// </summary>
public sealed record RouteLine(RouteAspect Aspect, string Item, string Field, string Value);
