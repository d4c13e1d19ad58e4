using Traceability.Domain.Gates;

namespace Traceability.Domain.Work;

/// <summary>How it is refused that one person does what two should.</summary>
internal static class AloneRefusals
{
    /// <summary>The field in which the reason is given.</summary>
    private const string Field = "aloneBecause";

    /// <summary>The refusal; null when the rule is met.</summary>
    /// <param name="need">What <see cref="SecondPerson.Of"/> said.</param>
    /// <param name="another">The words that say that another person must do it.</param>
    /// <param name="code">The kind of that refusal.</param>
    public static Refusal? Of(SecondPersonNeed need, Func<string> another, string code = RefusalCode.SecondPersonNeeded) =>
        need switch
        {
            SecondPersonNeed.Another when code == RefusalCode.SecondPersonNeeded => Refusal.Conflict(another(), code),
            SecondPersonNeed.Another => Refusal.Forbidden(another(), code),
            SecondPersonNeed.Reason => Refusal.Invalid(Field, RefusalTexts.SayWhyAlone),
            _ => null,
        };
}
