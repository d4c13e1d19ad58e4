using Traceability.Domain.Records;

namespace Traceability.Domain.Gates;

/// <summary>What a rule that asks for two people says to somebody.</summary>
public enum SecondPersonNeed
{
    /// <summary>Another did the work: this person may decide.</summary>
    None,

    /// <summary>This person did the work: another must decide.</summary>
    Another,

    /// <summary>The workshop works single-handed, and the person has not said why they do alone what two should.</summary>
    Reason,

    /// <summary>The workshop works single-handed: the person signs in a second time and has said why.</summary>
    Alone,
}

/// <summary>
/// The one place that says whether a second person is needed (common practice, no source). In a workshop that works single-handed a second
/// sign-in with the PIN and a reason stand in the second person's place, and a fact says so.
/// </summary>
public static class SecondPerson
{
    /// <summary>The rules that ask for two people, as facts name them.</summary>
    public const string OfConcession = "concession-by-builder",
        OfDoubt = "doubt-accepted-by-builder",
        OfApproval = "approval-by-author",
        OfStage = "stage-by-builder";

    /// <summary>What the rule says. That the PIN was given is proven before anything is decided.</summary>
    /// <param name="actor">Who wants to decide; see <see cref="Actor.SingleHanded"/>.</param>
    /// <param name="didTheWork">True when the same person did what is decided about.</param>
    public static SecondPersonNeed Of(Actor actor, bool didTheWork) =>
        !didTheWork ? SecondPersonNeed.None
        : actor.SingleHanded is not { } alone ? SecondPersonNeed.Another
        : string.IsNullOrWhiteSpace(alone.Because) ? SecondPersonNeed.Reason
        : SecondPersonNeed.Alone;

    /// <summary>The fact that says that one person did what two should.</summary>
    /// <param name="actor">Who, with the reason.</param>
    /// <param name="rule">The rule, one of those above.</param>
    /// <param name="partId">The part that it is about; null for a route.</param>
    /// <param name="subjectId">What it is about: the part, the nonconformity, the revision of a route.</param>
    /// <param name="stage">The stage that is done so; null when it is not about one.</param>
    /// <param name="stamp">Who and when.</param>
    public static SecondSignIn SignedBy(Actor actor, string rule, Guid? partId, Guid subjectId, string? stage, Stamp stamp) =>
        new(
            stamp.NewId(),
            partId,
            subjectId,
            rule,
            stage,
            actor.SingleHanded!.Because!.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );

    /// <summary>
    /// The person's second sign-in for a stage; it holds for one attempt: not any more once an attempt that began after it has ended.
    /// </summary>
    public static SecondSignIn? ForStage(Dossier dossier, string stage, Actor actor)
    {
        var since = dossier.Attempts.Where(a => a.Stage == stage).Select(a => a.Ending?.RecordedAt).Max();
        return actor.SingleHanded is null
            ? null
            : dossier
                .Of<SecondSignIn>()
                .LastOrDefault(s =>
                    s.Rule == OfStage && s.Stage == stage && s.By == actor.PersonId && (since is null || s.RecordedAt > since)
                );
    }
}

/// <summary>The workshop works single-handed.</summary>
/// <param name="Because">Why this person does alone what two should; null until it was said.</param>
public sealed record SingleHandedWork(string? Because = null);
