using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.Kinds;

/// <summary>
/// Looks at a kind where something of it is entered. Programs may enter any kind, and one not yet known is listed by its use; people
/// choose, and are asked about one that they type anew. A retired kind is refused to both.
/// </summary>
public sealed class KindDoor(WorkshopContext db, KindsQuery kinds)
{
    /// <summary>Why nothing new may be of that kind: it was retired or taken back; null otherwise.</summary>
    public async Task<Refusal?> ProblemAsync(KindOf of, string code, CancellationToken cancellation) =>
        await db.DecisionAsync(WorkshopKind.SubjectOf(of, code), cancellation) is { State: not SetupState.InUse } retired
            ? Refusal.Conflict(SetupSentences.KindIsRetired(code, retired.Reason), RefusalCode.Retired)
            : null;

    /// <summary>
    /// What a person is asked who typed a kind that stands in no list: which one was meant, or whether it is a new one; null when it stands
    /// there, or when the person is sure.
    /// </summary>
    public async Task<Refusal?> AskAsync(KindOf of, string field, string code, bool sure, CancellationToken cancellation)
    {
        var known = (await kinds.OfAsync(of, cancellation)).Where(k => k.Offered).Select(k => k.Code).ToList();
        return sure || code.Length == 0 || known.Contains(code) ? null
            : KindLikeness.Nearest(code, known) is { } near ? Refusal.Invalid(field, SetupSentences.DidYouMeanKind(code, near))
            : Refusal.Invalid(field, SetupSentences.KindIsNotListed(code));
    }

    /// <summary>What may be chosen, with its words.</summary>
    public async Task<IReadOnlyList<(string Value, string Words)>> OptionsAsync(KindOf of, CancellationToken cancellation) =>
        [
            .. (await kinds.OfAsync(of, cancellation))
                .Where(k => k.Offered)
                .Select(k => (k.Code, k.Title == k.Code ? k.Code : $"{k.Title} ({k.Code})")),
        ];
}
