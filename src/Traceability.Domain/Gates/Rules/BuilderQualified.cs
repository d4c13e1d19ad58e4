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
            return new(Rule, false, IsNotABuilder(actor.Name), BuilderSignsIn);
        }

        return q.Stage.Qualification is not { } needed ? new(Rule, true, IsSignedIn(actor.Name))
            : actor.IsQualifiedFor(needed, q.Context.Day) ? new(Rule, true, IsQualifiedFor(actor.Name, needed))
            : new(Rule, false, IsNotQualifiedFor(actor.Name, needed), QualifiedBuilderDoesIt);
    }

    private static string IsNotABuilder(string person) => GateTexts.Words.Say([person]);

    private static string BuilderSignsIn => GateTexts.Words.Say();

    private static string IsSignedIn(string person) => GateTexts.Words.Say([person]);

    private static string IsQualifiedFor(string person, string needed) => GateTexts.Words.Say([person, needed]);

    private static string IsNotQualifiedFor(string person, string needed) => GateTexts.Words.Say([person, needed]);

    private static string QualifiedBuilderDoesIt => GateTexts.Words.Say();
}
