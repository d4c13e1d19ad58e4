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
            return new(Rule, false, GateTexts.IsNotABuilder(actor.Name), GateTexts.BuilderSignsIn);
        }

        return q.Stage.Qualification is not { } needed ? new(Rule, true, GateTexts.IsSignedIn(actor.Name))
            : actor.IsQualifiedFor(needed, q.Context.Day) ? new(Rule, true, GateTexts.IsQualifiedFor(actor.Name, needed))
            : new(Rule, false, GateTexts.IsNotQualifiedFor(actor.Name, needed), GateTexts.QualifiedBuilderDoesIt);
    }
}
