using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>The word for how far an attempt has come: open, abandoned, or its verdict.</summary>
public static class AttemptState
{
    /// <summary>With corrections taken into account.</summary>
    public static string Of(AttemptView attempt) => Of(attempt.Ending is not null, attempt.Verdict);

    /// <summary>By whether the attempt has ended, and the verdict that counts for it.</summary>
    public static string Of(bool ended, Verdict? verdict) =>
        (ended, verdict) switch
        {
            (false, _) => "open",
            (_, null) => "abandoned",
            (_, { } given) => Words.Of(given),
        };
}
