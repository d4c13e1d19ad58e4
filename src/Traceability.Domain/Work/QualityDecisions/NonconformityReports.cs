using System.Text.RegularExpressions;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.QualityDecisions;

/// <summary>Somebody saw that a part does not conform, apart from any reading.</summary>
public static partial class NonconformityReports
{
    /// <summary>Leads to an open nonconformity, which stops the part until it is decided on.</summary>
    public static Decision<Nonconformity> Raise(Dossier dossier, string code, string description, Stamp stamp)
    {
        if (!CodePattern().IsMatch(code))
        {
            return Refusal.Invalid("code", RefusalTexts.CodeOfNonconformityIsSmallLetters);
        }

        if (string.IsNullOrWhiteSpace(description))
        {
            return Refusal.Invalid("description", RefusalTexts.SayWhatWasSeen);
        }

        return dossier.Scrapped
            ? Refusal.Conflict(RefusalTexts.WasScrappedAlready(dossier.Part.Serial), RefusalCode.AlreadyDone)
            : Accept(
                new Nonconformity(
                    stamp.NewId(),
                    dossier.Part.Id,
                    dossier.OpenAttempt?.Id,
                    dossier.OpenAttempt?.Stage,
                    code,
                    description,
                    stamp.By,
                    stamp.OccurredAt,
                    stamp.RecordedAt
                )
            );

        static Decision<Nonconformity> Accept(Nonconformity n) => Decision.Accept(n, [n]);
    }

    [GeneratedRegex(@"^[a-z0-9][a-z0-9-]{0,39}\z")]
    private static partial Regex CodePattern();
}
