using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work;

/// <summary>The next revision of what the workshop says about itself.</summary>
public static class WorkshopRevisions
{
    /// <summary>Most characters of the name, of each block of lines, and of the warranty terms.</summary>
    public const int LongestName = 120,
        LongestLines = 500,
        LongestTerms = 2000;

    /// <summary>
    /// Leads to the next revision. A wish that changes nothing leads to the latest one and to no fact. The logo stays as it is.
    /// </summary>
    /// <param name="latest">The revision in force; null for the first.</param>
    /// <param name="wish">What is wished.</param>
    /// <param name="basedOn">The revision that the wish was made from (0 for none yet); null when that is not known.</param>
    /// <param name="zones">Names of all time zones known.</param>
    /// <param name="languages">Languages that have words.</param>
    /// <param name="stamp">Who and when.</param>
    public static Decision<WorkshopRevision> Revise(
        WorkshopRevision? latest,
        WorkshopWish wish,
        int? basedOn,
        IReadOnlySet<string> zones,
        IReadOnlySet<string> languages,
        Stamp stamp
    )
    {
        if (basedOn is { } seen && seen != (latest?.Revision ?? 0))
        {
            return Refusal.Conflict(RefusalTexts.WorkshopChangedMeanwhile(latest?.Revision ?? 0, seen), RefusalCode.ChangedMeanwhile);
        }

        var errors = Problems(latest, wish, zones, languages).ToDictionary(p => p.Field, p => new[] { p.Problem });
        if (errors.Count > 0)
        {
            return new Refusal(RefusalKind.Invalid, string.Join(" ", errors.Values.Select(e => e[0])), [], errors);
        }

        var next = new WorkshopRevision(
            stamp.NewId(),
            (latest?.Revision ?? 0) + 1,
            wish.Name.Trim(),
            Lines(wish.Address),
            Lines(wish.Contact),
            wish.TimeZone.Trim(),
            Lines(wish.PublicUrl)?.TrimEnd('/'),
            wish.Language.Trim(),
            wish.DayStyle,
            Lines(wish.WarrantyTerms),
            wish.Sections.Suppliers,
            wish.Sections.LotNumbers,
            wish.Sections.Reworks,
            wish.Names,
            wish.SingleHanded,
            latest?.LogoSha256,
            latest?.LogoType,
            Lines(wish.Reason),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return latest is not null && Same(latest, next) ? Decision.Accept(latest) : Decision.Accept(next, next);
    }

    /// <summary>Leads to the next revision with this logo and all else as it was; null takes the logo away.</summary>
    public static Decision<WorkshopRevision> WithLogo(WorkshopRevision? latest, string? sha256, string? type, Stamp stamp)
    {
        if (latest is null)
        {
            return Refusal.Conflict(RefusalTexts.NameTheWorkshopBeforeItsLogo);
        }

        if (latest.LogoSha256 == sha256)
        {
            return Decision.Accept(latest);
        }

        var next = latest with
        {
            Id = stamp.NewId(),
            Revision = latest.Revision + 1,
            LogoSha256 = sha256,
            LogoType = type,
            Reason = null,
            By = stamp.By,
            OccurredAt = stamp.OccurredAt,
            RecordedAt = stamp.RecordedAt,
        };
        return Decision.Accept(next, next);
    }

    private static IEnumerable<(string Field, string Problem)> Problems(
        WorkshopRevision? latest,
        WorkshopWish wish,
        IReadOnlySet<string> zones,
        IReadOnlySet<string> languages
    )
    {
        if (string.IsNullOrWhiteSpace(wish.Name) || wish.Name.Trim().Length > LongestName || wish.Name.Any(char.IsControl))
        {
            yield return ("name", RefusalTexts.WorkshopHasAName(LongestName));
        }

        foreach (var (field, text) in new[] { ("address", wish.Address), ("contact", wish.Contact) })
        {
            if (text?.Trim().Length > LongestLines)
            {
                yield return (field, RefusalTexts.TextHasAtMost(LongestLines));
            }
        }

        if (!zones.Contains(wish.TimeZone.Trim()))
        {
            yield return ("timeZone", RefusalTexts.ThereIsNoTimeZone(wish.TimeZone.Trim()));
        }

        if (!string.IsNullOrWhiteSpace(wish.PublicUrl) && !PublicAddress.LeadsHereFromOutside(wish.PublicUrl))
        {
            yield return ("publicUrl", RefusalTexts.AddressLeadsNowhere(wish.PublicUrl.Trim()));
        }

        if (!languages.Contains(wish.Language.Trim()))
        {
            yield return ("language", RefusalTexts.LanguageHasNoWords(wish.Language.Trim(), string.Join(", ", languages.Order())));
        }

        if (wish.WarrantyTerms?.Trim().Length > LongestTerms)
        {
            yield return ("warrantyTerms", RefusalTexts.TextHasAtMost(LongestTerms));
        }

        if (wish.Reason?.Trim().Length > LongestLines)
        {
            yield return ("reason", RefusalTexts.TextHasAtMost(LongestLines));
        }
        else if (wish.SingleHanded && latest?.SingleHanded != true && string.IsNullOrWhiteSpace(wish.Reason))
        {
            yield return ("reason", RefusalTexts.SayWhySingleHanded);
        }
    }

    private static bool Same(WorkshopRevision latest, WorkshopRevision next) =>
        next
        == latest with
        {
            Id = next.Id,
            Revision = next.Revision,
            Reason = next.Reason,
            By = next.By,
            OccurredAt = next.OccurredAt,
            RecordedAt = next.RecordedAt,
        };

    private static string? Lines(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim().ReplaceLineEndings("\n");
}
