using Traceability.Domain.Records;

namespace Traceability.Domain.Gates.Rules;

/// <summary>The person is a builder and qualified for this kind of work today.</summary>
public static class BuilderQualified
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "qualified";

    /// <summary>Judges the person; says nothing when the gate is only looked at.</summary>
    public static GateCheck? Check(GateQuestion q)
    {
        if (q.Context.Actor is not { } actor)
        {
            return null;
        }

        if (!actor.Is(Role.Builder) && !actor.Is(Role.Quality))
        {
            return new(Rule, false, $"{actor.Name} is not a builder", "a builder signs in");
        }

        return q.Stage.Qualification is not { } needed ? new(Rule, true, $"{actor.Name} is signed in")
            : actor.IsQualifiedFor(needed, q.Context.Day) ? new(Rule, true, $"{actor.Name} is qualified for {needed}")
            : new(Rule, false, $"{actor.Name} is not qualified for {needed}", "a qualified builder does it, or the workshop lead records the qualification");
    }
}
