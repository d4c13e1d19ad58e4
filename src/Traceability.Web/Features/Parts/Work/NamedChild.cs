using Traceability.Domain.Records;
using Traceability.Persistence.Book;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>A child that is to be fitted, locked, and when it was last taken out of something.</summary>
internal sealed record NamedChild(OpenPart Part, DateTimeOffset? TakenOutAt)
{
    /// <summary>The last thing that happened to it: it cannot have been fitted elsewhere before.</summary>
    public DateTimeOffset FreeSince =>
        Part
            .Dossier.Facts.Where(f => f is Attempt or AttemptEnding or Removal or Disposition)
            .Select(f => f.OccurredAt)
            .Append(TakenOutAt ?? Part.Dossier.Part.OccurredAt)
            .Max();
}
